namespace Transport;

/// <summary>How much a cylindrical pore hinders a sphere, by λ = solute radius / pore radius.</summary>
/// <remarks>
/// By default the pair of the three-pore literature; attributed to Rippe and Haraldsson, Physiol Rev 1994;74:163 (memory). Checked: together
/// they reproduce all sixteen reflection coefficients and all relative permeabilities of a published table (Sci Rep 2020;
/// s41598-020-75687-1, Table 1, read).
/// </remarks>
public static class Hindrance
{
    /// <summary>Restricted-diffusion factor A/A0: 1 for a point, 0 where the solute fills the pore.</summary>
    /// <exception cref="ArgumentOutOfRangeException">λ is negative or NaN, or the form does not exist.</exception>
    public static double DiffusionFactor(double lambda, HindranceForm form = HindranceForm.ThreePore)
    {
        Require.NotNegative(lambda, "");
        return lambda >= 1 ? 0 : form switch
        {
            HindranceForm.ThreePore or HindranceForm.PolynomialReflection =>
                Math.Pow(1 - lambda, 4.5) / (1 - 0.3956 * lambda + 1.0616 * lambda * lambda),
            HindranceForm.DechadilokDeen => lambda == 0 ? 1 : Math.Max(0, 1 + 9.0 / 8.0 * lambda * Math.Log(lambda) + lambda * Horner(lambda, DiffusionTerms)),
            _ => throw Unknown(form),
        };
    }

    /// <summary>Reflection coefficient σ: 0 for a point, 1 where the solute cannot enter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">λ is negative or NaN, or the form does not exist.</exception>
    public static double ReflectionCoefficient(double lambda, HindranceForm form = HindranceForm.ThreePore)
    {
        Require.NotNegative(lambda, "");
        if (lambda >= 1)
        {
            return 1;
        }

        var partition = (1 - lambda) * (1 - lambda);
        return form switch
        {
            HindranceForm.ThreePore => 1 - partition * (2 - partition) * (1 - lambda / 3) / (1 - lambda / 3 + 2.0 / 3.0 * lambda * lambda),
            HindranceForm.PolynomialReflection => lambda * lambda * Horner(lambda, [16.0 / 3.0, -20.0 / 3.0, 7.0 / 3.0]),
            HindranceForm.DechadilokDeen =>
                1 - partition * Horner(lambda, [1, 3.867, -1.907, -0.834]) / Horner(lambda, [1, 1.867, -0.741]),
            _ => throw Unknown(form),
        };
    }

    private static ReadOnlySpan<double> DiffusionTerms => [-1.56034, 0.528155, 1.91521, -2.81903, 0.270788, 1.10115, -0.435933];

    private static double Horner(double x, ReadOnlySpan<double> coefficients)
    {
        var sum = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            sum = sum * x + coefficients[i];
        }

        return sum;
    }

    private static ArgumentOutOfRangeException Unknown(HindranceForm form) => new(nameof(form), form, "Expected a form that exists.");
}
