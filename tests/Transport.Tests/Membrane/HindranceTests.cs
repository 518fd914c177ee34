using FsCheck;
using FsCheck.Xunit;
using Transport.Tests.Properties;

namespace Transport.Tests.Membrane;

/// <summary>How a pore hinders a solute: against a computed table, against a published table, and in its limits.</summary>
public sealed class HindranceTests
{
    [Theory]
    [InlineData(0.01, 0.000463, 0.959475)]
    [InlineData(0.05, 0.011182, 0.807715)]
    [InlineData(0.10, 0.042702, 0.640984)]
    [InlineData(0.20, 0.153778, 0.380298)]
    [InlineData(0.30, 0.306344, 0.205640)]
    [InlineData(0.40, 0.474301, 0.099235)]
    [InlineData(0.50, 0.635417, 0.041396)]
    [InlineData(0.60, 0.773538, 0.014143)]
    [InlineData(0.70, 0.879460, 0.003568)]
    [InlineData(0.80, 0.950437, 0.000525)]
    [InlineData(0.90, 0.988766, 0.000021)]
    public void Reflection_and_diffusion_factors_agree_with_a_table_computed_elsewhere(double lambda, double reflection, double diffusion)
    {
        // Source: a table computed independently from the two formulas (computed), six decimals.
        // Tolerance: half a unit of the last printed digit.
        Assert.Equal(reflection, Hindrance.ReflectionCoefficient(lambda), 5e-7);
        Assert.Equal(diffusion, Hindrance.DiffusionFactor(lambda), 5e-7);
    }

    [Theory]
    [InlineData(0.01, 0.000527, 0.000769, 0.932643)]
    [InlineData(0.05, 0.012515, 0.017312, 0.755015)]
    [InlineData(0.10, 0.046900, 0.061211, 0.591844)]
    [InlineData(0.20, 0.163733, 0.194881, 0.357897)]
    [InlineData(0.30, 0.318900, 0.354955, 0.203333)]
    [InlineData(0.40, 0.486400, 0.516171, 0.105013)]
    [InlineData(0.50, 0.645833, 0.663592, 0.047447)]
    [InlineData(0.60, 0.782400, 0.788196, 0.017692)]
    [InlineData(0.70, 0.886900, 0.884877, 0.004904)]
    [InlineData(0.80, 0.955733, 0.951547, 0.000801)]
    [InlineData(0.90, 0.990900, 0.988810, 0.000033)]
    public void The_other_forms_agree_with_a_table_computed_elsewhere(double lambda, double polynomial, double modern, double modernDiffusion)
    {
        // Source: the same table (computed), six decimals. Tolerance: half a unit of the last printed digit.
        Assert.Equal(polynomial, Hindrance.ReflectionCoefficient(lambda, HindranceForm.PolynomialReflection), 5.1e-7);
        Assert.Equal(modern, Hindrance.ReflectionCoefficient(lambda, HindranceForm.DechadilokDeen), 5.1e-7);
        Assert.Equal(modernDiffusion, Hindrance.DiffusionFactor(lambda, HindranceForm.DechadilokDeen), 5.1e-7);
        Assert.Equal(Hindrance.DiffusionFactor(lambda), Hindrance.DiffusionFactor(lambda, HindranceForm.PolynomialReflection));
    }

    // Table 1 of a three-pore capillary study, Sci Rep 2020, s41598-020-75687-1 (read): pore radii 45 and 250 Å.
    [Theory]
    [InlineData("urea", 1.8, 45, 0.0072, 5e-5)]
    [InlineData("urea", 1.8, 250, 0.00024, 5e-6)]
    [InlineData("albumin", 35.5, 45, 0.9442, 5e-5)]
    [InlineData("albumin", 35.5, 250, 0.0826, 5e-5)]
    [InlineData("globulins", 69.9, 45, 1.0, 0.0)]
    [InlineData("globulins", 69.9, 250, 0.2732, 5e-5)]
    public void Reflection_coefficients_are_those_printed_in_2020(string solute, double radius, double pore, double printed, double halfDigit)
    {
        Assert.NotEmpty(solute);
        Assert.Equal(printed, Hindrance.ReflectionCoefficient(radius / pore), halfDigit);
    }

    [Theory]
    [InlineData("potassium", 1.3, 291.71, 0.005)]
    [InlineData("bicarbonate", 2.2, 157.97, 0.005)]
    [InlineData("creatinine", 2.6, 128.46, 0.005)]
    [InlineData("albumin", 35.5, 0.0082, 0.00005)]
    public void Permeabilities_relative_to_urea_are_those_printed_in_2020(string solute, double radius, double printed, double halfDigit)
    {
        // The same table (read): PS of the small pores, urea 200.78. Tolerance: half a printed digit of either figure.
        const double urea = 200.78, ureaHalfDigit = 0.005;
        var relative = SmallPore(radius) / SmallPore(1.8);
        Assert.NotEmpty(solute);
        Assert.Equal(printed, relative * urea, halfDigit + relative * ureaHalfDigit);

        static double SmallPore(double radius) => PhysicalConstants.FreeDiffusion(radius) * Hindrance.DiffusionFactor(radius / 45);
    }

    [Theory]
    [InlineData(HindranceForm.ThreePore)]
    [InlineData(HindranceForm.PolynomialReflection)]
    [InlineData(HindranceForm.DechadilokDeen)]
    public void Every_form_goes_from_a_free_point_to_a_full_pore_without_a_turn(HindranceForm form)
    {
        // Physics: σ from 0 to 1 and diffusion from 1 to 0, both monotone and without a jump at the ends. The jump's tolerance: the logarithm's
        // slope makes 2e-5 of λ = 1e-6; at λ = 1 the coefficients have six digits. The modern diffusion formula ends within its rounding of zero.
        double reflection = 0, diffusion = 1;
        Assert.Equal(0, Hindrance.ReflectionCoefficient(0, form));
        Assert.Equal(1, Hindrance.DiffusionFactor(0, form));
        Assert.Equal(1, Hindrance.DiffusionFactor(1e-6, form), 2e-5);
        Assert.Equal(1, Hindrance.ReflectionCoefficient(1 - 1e-6, form), 1e-5);
        Assert.Equal(0, Hindrance.DiffusionFactor(1 - 1e-6, form), 1e-5);
        for (var lambda = 0.001; lambda < 1; lambda += 0.001)
        {
            var (more, less) = (Hindrance.ReflectionCoefficient(lambda, form), Hindrance.DiffusionFactor(lambda, form));
            Assert.True(more >= reflection - 1e-6 && more <= 1 + 1e-12, $"σ at {lambda}");
            Assert.True(less <= diffusion + 1e-5 && less >= 0, $"diffusion at {lambda}");
            (reflection, diffusion) = (more, less);
        }
    }

    [Fact]
    public void A_form_that_does_not_exist_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Hindrance.ReflectionCoefficient(0.1, (HindranceForm)9));
        Assert.Throws<ArgumentOutOfRangeException>(() => Hindrance.DiffusionFactor(0.1, (HindranceForm)9));
    }

    [Fact]
    public void A_point_passes_freely_and_what_fills_the_pore_not_at_all()
    {
        Assert.Equal(0, Hindrance.ReflectionCoefficient(0));
        Assert.Equal(1, Hindrance.DiffusionFactor(0));
        Assert.Equal(1, Hindrance.ReflectionCoefficient(1));
        Assert.Equal(0, Hindrance.DiffusionFactor(1));
        Assert.Equal(1, Hindrance.ReflectionCoefficient(2.5));
        Assert.Equal(0, Hindrance.DiffusionFactor(2.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => Hindrance.ReflectionCoefficient(-0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => Hindrance.DiffusionFactor(double.NaN));
    }

    [Property(MaxTest = 500, Replay = Seeds.Fixed)]
    public void A_larger_solute_is_reflected_more_and_diffuses_less(NormalFloat one, NormalFloat other)
    {
        // Property of the physics. 1e-15: both functions are of order one and have a few roundings.
        var lambdas = new[] { Fraction(one.Get), Fraction(other.Get) };
        var (small, large) = (lambdas.Min(), lambdas.Max());
        Assert.True(Hindrance.ReflectionCoefficient(large) >= Hindrance.ReflectionCoefficient(small) - 1e-15);
        Assert.True(Hindrance.DiffusionFactor(large) <= Hindrance.DiffusionFactor(small) + 1e-15);
        Assert.InRange(Hindrance.ReflectionCoefficient(small), 0, 1);
        Assert.InRange(Hindrance.DiffusionFactor(small), 0, 1);
    }

    private static double Fraction(double any) => Math.Abs(any) % 1;
}
