using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

/// <summary>Worked outside this code from the integrated balance (computed); tolerance half the last printed digit.</summary>
public sealed class MassTransferCoefficientTests
{
    [Theory]
    [InlineData(0, 9.90093)]
    [InlineData(0.33, 10.42463)]
    [InlineData(0.5, 10.69442)]
    [InlineData(1, 11.48791)]
    public void D_over_P_of_0_70_with_2100_to_2480_mL(double weight, double expected) =>
        Assert.Equal(expected, K(1, 0, 0.70, 2480, Plain(weight)), 5e-6);

    [Theory]
    [InlineData(0, 9.34852)]
    [InlineData(0.5, 10.14201)]
    [InlineData(1, 10.93550)]
    public void Creatinine_800_from_45_to_560(double weight, double expected) =>
        Assert.Equal(expected, K(800, 45, 560, 2480, Plain(weight)), 5e-6);

    [Theory]
    [InlineData(0, 10.07976)]
    [InlineData(0.5, 10.87325)]
    [InlineData(1, 11.66674)]
    public void Glucose_6_5_from_195_to_62_runs_the_other_way(double weight, double expected) =>
        Assert.Equal(expected, K(6.5, 195, 62, 2480, Plain(weight)), 5e-6);

    [Theory]
    [InlineData(0.34, 3.64, 3.27, 2.90, 2.64, 2.49)]
    [InlineData(0.50, 6.07, 5.87, 5.67, 5.25, 4.82)]
    [InlineData(0.65, 9.19, 9.22, 9.24, 8.59, 7.70)]
    [InlineData(0.70, 10.53, 10.66, 10.78, 10.04, 8.90)]
    [InlineData(0.81, 14.53, 14.94, 15.35, 14.32, 12.24)]
    [InlineData(0.90, 20.15, 20.96, 21.77, 20.33, 16.29)]
    public void The_table_of_coefficients_against_D_over_P(
        double ratio, double still, double to2400, double to2700, double withoutDialysate, double inPlasmaWater)
    {
        // Printed to two decimals, so 0.005. In the last column D0 is 5 % of plasma water, 0.9374 of plasma.
        Assert.Equal(still, K(1, 0, ratio, 2100, Plain(0.5)), 0.0051);
        Assert.Equal(to2400, K(1, 0, ratio, 2400, Plain(0.5)), 0.0051);
        Assert.Equal(to2700, K(1, 0, ratio, 2700, Plain(0.5)), 0.0051);
        Assert.Equal(withoutDialysate, K(1, 0, ratio, 2400, Plain(0)), 0.0051);
        Assert.Equal(inPlasmaWater, K(1, 0.05 / 0.9374, ratio, 2400, new() { PlasmaWaterFraction = 0.9374 }), 0.0051);
    }

    [Theory]
    [InlineData(0, 576.5462)]
    [InlineData(0.5, 556.9733)]
    [InlineData(1, 535.6860)]
    public void A_known_coefficient_comes_back_from_the_end_of_its_own_differential_equation(double weight, double end)
    {
        // d(VD)/dt = K (P − D) + J [(1 − F) P + F D] with K 10, P 800, D0 45, J 1.6 mL/min, solved elsewhere: the printed end of 7 figures
        // carries K to 1e-5. The logarithmic mean is exact; the arithmetic one gives 10.0235, 0.24 % high.
        Assert.Equal(10.0000, K(800, 45, end, 2484, Plain(weight) with { MeanVolume = MeanVolume.Logarithmic }), 1e-4);
        Assert.Equal(10.0235, K(800, 45, end, 2484, Plain(weight)), 1e-4);
    }

    [Fact]
    public void The_coefficient_comes_back_from_an_integration_of_our_own_with_many_small_steps()
    {
        // Second witness for the case above with another K and D0: midpoint rule, 24,000 steps of 0.01 min, error far below 1e-6.
        var (K0, P, D0, V0, J, F) = (7.0, 900.0, 60.0, 2250.0, 2.0, 0.5);
        var (amount, volume, h) = (V0 * D0, V0, 0.01);
        double Rate(double m, double v) => K0 * (P - m / v) + J * ((1 - F) * P + F * m / v);
        for (var i = 0; i < 24_000; i++)
        {
            var middle = amount + h / 2 * Rate(amount, volume);
            amount += h * Rate(middle, volume + J * h / 2);
            volume += J * h;
        }

        var found = MassTransferCoefficient.Of(
            Micromolar(P), Micromolar(D0), Micromolar(amount / volume), Volume.FromMilliliters(V0), Volume.FromMilliliters(volume),
            TimeSpan.FromMinutes(240), Plain(F) with { MeanVolume = MeanVolume.Logarithmic });
        Assert.Equal(K0, found!.Value.MillilitersPerMinute, 1e-6);
    }

    [Theory]
    [InlineData(800, 45, 800)]
    [InlineData(800, 45, 850)]
    [InlineData(800, 800, 820)]
    public void There_is_no_coefficient_once_dialysate_has_met_plasma(double plasma, double start, double end) =>
        Assert.Null(MassTransferCoefficient.Of(
            Micromolar(plasma), Micromolar(start), Micromolar(end), Volume.FromMilliliters(2100), Volume.FromMilliliters(2480),
            TimeSpan.FromMinutes(240), Plain(0.5)));

    private static MassTransferOptions Plain(double weight) => new() { ConvectionWeight = weight, PlasmaWaterFraction = 1 };

    private static double K(double plasma, double start, double end, double finalVolume, MassTransferOptions options) =>
        MassTransferCoefficient.Of(
            Millimolar(plasma), Millimolar(start), Millimolar(end), Volume.FromMilliliters(2100), Volume.FromMilliliters(finalVolume),
            TimeSpan.FromMinutes(240), options)!.Value.MillilitersPerMinute;
}
