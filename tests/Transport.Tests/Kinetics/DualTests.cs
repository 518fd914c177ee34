namespace Transport.Tests.Kinetics;

/// <summary>The lane with derivatives: the same numbers as the plain lane, and the derivatives that differences give.</summary>
public sealed class DualTests
{
    private const int FreeCount = 9;

    private static readonly string[] Names = ["LpS", "A0/Δx", "glucose scale", "lymph", "residual volume", "transient", "ultrasmall share", "large share", "sodium permeability"];

    private static readonly SolutePanel Panel = SolutePanel.Full;

    [Theory]
    [InlineData(AreaLaw.Constant, PlasmaLevel.AsMeasured)]
    [InlineData(AreaLaw.TwoThirds, PlasmaLevel.PlasmaWater)]
    [InlineData(AreaLaw.Exponential, PlasmaLevel.AsMeasured)]
    public void The_value_is_the_plain_one_to_the_bit(AreaLaw law, PlasmaLevel level)
    {
        // The same operations in the same order, and the step is chosen by the values alone.
        var membrane = ReferenceMembranes.MeanIncidentAdult(level) with { AreaLaw = law };
        var plain = Simulate(membrane, Point(membrane), Real.Of, 300, 1e-8);
        var dual = Simulate(membrane, Point(membrane), Dual.Of, 300, 1e-8);
        Assert.Equal(plain.Select(component => component.Value), dual.Select(component => component.Value));
    }

    [Theory]
    [InlineData(AreaLaw.Constant, 240, 2e-6)]
    [InlineData(AreaLaw.Constant, 600, 2e-6)]
    [InlineData(AreaLaw.TwoThirds, 240, 2e-6)]
    [InlineData(AreaLaw.Exponential, 30, 2e-6)]
    [InlineData(AreaLaw.Exponential, 600, 2e-6)]
    public void Derivatives_are_central_differences(AreaLaw law, double minutes, double agreement)
    {
        // Step 1e-4 of the parameter: the difference is off by about 1e-8 of the third logarithmic derivative, and by the two runs' own error of
        // 1e-12 over 1e-4 = 1e-8. The derivative's own run is at the default tolerance, 1e-8, of a solution that is known to about
        // twenty times that; the step is chosen by the values alone, so a derivative may have more, the more the longer the steps. Hence 2e-5, of the largest sensitivity
        // p ∂y/∂p or of y itself.
        // The two-thirds law has a kink, where the derivative's rate jumps: a step ends on it, so the bound is the same.
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { AreaLaw = law, GlucosePermeabilityScale = 1.3 };
        var point = Point(membrane);
        for (var p = 0; p < FreeCount; p++)
        {
            var dual = Simulate(membrane, point, (value, index) => index == p ? Dual.Parameter(value, p % Dual.Width) : Dual.Of(value), minutes, 1e-8);
            var step = 1e-4 * point[p];
            double[] above = [.. point], below = [.. point];
            above[p] += step;
            below[p] -= step;
            var high = Simulate(membrane, above, (value, _) => Real.Of(value), minutes, 1e-12);
            var low = Simulate(membrane, below, (value, _) => Real.Of(value), minutes, 1e-12);
            for (var i = 0; i < dual.Length; i++)
            {
                var difference = (high[i].Value - low[i].Value) / (2 * step) * point[p];
                var found = dual[i].Slopes[p % Dual.Width] * point[p];
                var size = Math.Max(Math.Abs(difference), Math.Abs(high[i].Value));
                Assert.True(
                    Math.Abs(found - difference) <= agreement * size,
                    $"∂/∂ln {Names[p]} of component {i}: {found:R} by the lane, {difference:R} by differences, off by {(found - difference) / size:E1}");
            }
        }
    }

    [Fact]
    public void Eight_parameters_at_once_are_the_same_as_one_at_a_time()
    {
        // Columns of a lane do not mix: to the bit.
        var membrane = ReferenceMembranes.MeanIncidentAdult();
        var point = Point(membrane);
        var all = Simulate(membrane, point, (value, index) => index < Dual.Width ? Dual.Parameter(value, index) : Dual.Of(value), 240, 1e-8);
        for (var p = 0; p < Dual.Width; p++)
        {
            var one = Simulate(membrane, point, (value, index) => index == p ? Dual.Parameter(value, p) : Dual.Of(value), 240, 1e-8);
            Assert.Equal(one.Select(component => component.Slopes[p]), all.Select(component => component.Slopes[p]));
        }
    }

    private static double[] Point(ThreePoreMembrane membrane) =>
    [
        membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury,
        membrane.DiffusionArea.Centimeters,
        membrane.GlucosePermeabilityScale,
        membrane.LymphaticRemoval.MillilitersPerMinute,
        250,
        membrane.TransientAmplitude,
        membrane.Pores.UltrasmallFraction,
        membrane.Pores.LargeFraction,
        membrane.SodiumPermeability.MillilitersPerMinute,
    ];

    private static T[] Simulate<T>(ThreePoreMembrane membrane, double[] point, Func<double, T> lane, double minutes, double tolerance)
        where T : struct, ILane<T> => Simulate(membrane, point, (value, _) => lane(value), minutes, tolerance);

    private static T[] Simulate<T>(ThreePoreMembrane membrane, double[] point, Func<double, int, T> lane, double minutes, double tolerance)
        where T : struct, ILane<T>
    {
        var free = new FreeParameters<T>
        {
            UltrafiltrationCoefficient = lane(point[0], 0),
            DiffusionArea = lane(point[1], 1),
            GlucosePermeabilityScale = lane(point[2], 2),
            LymphaticRemoval = lane(point[3], 3),
            TransientAmplitude = lane(point[5], 5),
            UltrasmallFraction = lane(point[6], 6),
            LargeFraction = lane(point[7], 7),
            SodiumPermeability = lane(point[8], 8),
        };
        var plasma = PlasmaComposition.Typical;
        var fresh = CavityContents.Of(DialysisSolution.Glucose227, Panel);
        var system = new ThreePoreSystem<T>(membrane, free, Panel, CavityContents.Of(plasma, Panel));
        fresh.CopyTo(system.Fresh);
        var state = new T[system.Dimension];
        DwellStart.Write<T>(state, 2000, fresh, lane(point[4], 4), CavityContents.Of(ResidualFluid.Used(Volume.FromMilliliters(1), plasma), Panel));
        var integrator = new DormandPrince853<T, ThreePoreSystem<T>>(system);
        var watch = new Watch<T>();
        integrator.Run(0, minutes, state, new() { RelativeTolerance = tolerance }, ref watch);
        return state;
    }

    private readonly struct Watch<T> : IStepObserver<T>
        where T : struct, ILane<T>
    {
        public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

        public double Observe(ref DenseStep<T> step) => double.NaN;
    }
}
