using System.Collections.Immutable;

namespace Transport.Tests.Dwells;

/// <summary>Peaks and crossings of dwells that can be solved by hand, and what is said where there are none.</summary>
public sealed class LandmarkTests
{
    // Fill on an empty cavity.
    private const double V0 = 2000;

    [Fact]
    public void Peak_and_isovolemia_are_those_of_a_closed_solution()
    {
        // One barrier that lets water through alone and loses A = 4 mL/min; no glucose in plasma. Then dV/dt = c D − A and dD/dt = −c D²/V with
        // c = RT G, and with u = 1/D, a = A/c: V = V0 D0 u e^(−a (u − u0)), t = V0 D0/c [(u0/a + 1/a²) − (u/a + 1/a²) e^(−a (u − u0))]. The peak is
        // at u = 1/a; isovolemia where V = V0 again. By hand. The integration's tolerance is 1e-11; times of a peak that is flat: 1e-5 min.
        const double A = 4, D0 = 126;
        var c = 19.34 * 0.003;
        double a = A / c, u0 = 1 / D0;
        double Volume(double u) => V0 * D0 * u * Math.Exp(-a * (u - u0));
        double Time(double u) => V0 * D0 / c * (u0 / a + 1 / (a * a) - (u / a + 1 / (a * a)) * Math.Exp(-a * (u - u0)));
        double low = 1 / a, high = 20 / a;
        while (high - low > 1e-15)
        {
            var middle = 0.5 * (low + high);
            (low, high) = Volume(middle) > V0 ? (middle, high) : (low, middle);
        }

        var course = Run(WaterAlone(A), D0, 900);
        var peak = course.PeakUltrafiltration();
        Assert.Equal(Volume(1 / a), peak.Volume.Milliliters, 1e-6);
        Assert.Equal(Volume(1 / a) - V0, peak.NetUltrafiltration.Milliliters, 1e-6);
        Assert.Equal(Time(1 / a), peak.Time.TotalMinutes, 1e-5);
        Assert.False(peak.IsAtEnd);
        Assert.Equal(Time(low), course.IsovolemicTime().Time.TotalMinutes, 1e-5);
    }

    [Fact]
    public void What_was_not_reached_is_no_time()
    {
        // The same dwell, ended before its peak (252 min) and between peak and isovolemia (613 min).
        var early = Run(WaterAlone(4), 126, 200);
        Assert.True(early.PeakUltrafiltration().IsAtEnd);
        Assert.Equal(TimeSpan.FromMinutes(200), early.PeakUltrafiltration().Time);
        foreach (var moment in new[] { early.IsovolemicTime(), Run(WaterAlone(4), 126, 500).IsovolemicTime(), early.UreaGlucoseCrossing() })
        {
            Assert.Equal(Moment.NotReached, moment);
            Assert.Equal("not reached", moment.ToString());
            Assert.Throws<InvalidOperationException>(() => moment.Time);
        }

        // Nothing draws: the volume never rose, so it is what it was at once.
        Assert.Equal(Moment.At(TimeSpan.Zero), Run(WaterAlone(4) with { OsmoticConductanceToGlucose = default }, 126, 200).IsovolemicTime());
        Assert.Throws<ArgumentOutOfRangeException>(() => Moment.At(TimeSpan.FromMinutes(-1)));
    }

    [Theory]
    [InlineData(5)]
    [InlineData(10)]
    [InlineData(23)]
    public void Urea_and_glucose_of_one_permeability_cross_where_half_is_gone(double transfer)
    {
        // Constant volume, no urea in the fill, no glucose in plasma: 1 − e^(−K t/V) = e^(−K t/V) at t = V ln 2 / K, when D/P and D/D0 are 0.5.
        var still = WaterAlone(0) with
        {
            OsmoticConductanceToGlucose = default,
            MassTransfer = SolutePanel.Small.Solutes.ToImmutableDictionary(solute => solute, _ => Clearance.FromMillilitersPerMinute(transfer)),
        };
        var course = Run(still, 126, 480);
        var crossing = course.UreaGlucoseCrossing().Time;
        Assert.Equal(V0 * Math.Log(2) / transfer, crossing.TotalMinutes, 1e-6);
        Assert.Equal(0.5, course.DialysateToPlasmaAt(Solutes.Urea, crossing), 1e-9);
        Assert.Equal(0.5, course.GlucoseToInitialAt(crossing), 1e-9);
    }

    [Fact]
    public void The_textbook_crosses_earlier_the_faster_it_is()
    {
        // By the definition D/P and D/D0 are equal there: 1e-9. Faster membranes cross earlier.
        var before = TimeSpan.MaxValue;
        foreach (var area in new[] { 0.6, 1.0, 1.6 })
        {
            var course = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook.With(area: area), TextbookDwells.Medium);
            var time = course.UreaGlucoseCrossing().Time;
            Assert.Equal(course.DialysateToPlasmaAt(Solutes.Urea, time), course.GlucoseToInitialAt(time), 1e-9);
            Assert.True(time < before);
            before = time;
        }
    }

    [Fact]
    public void Isovolemia_of_a_fast_membrane_is_where_its_volume_is_the_first_again()
    {
        // By the definition, 1e-6 mL; before it the cavity was fuller, after it is emptier.
        var course = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook.With(area: 1.6), TextbookDwells.Weak);
        var time = course.IsovolemicTime().Time;
        Assert.Equal(0, course.NetUltrafiltrationAt(time).Milliliters, 1e-6);
        Assert.True(course.NetUltrafiltrationAt(time - TimeSpan.FromMinutes(1)).Milliliters > 0);
        Assert.True(course.NetUltrafiltrationAt(time + TimeSpan.FromMinutes(1)).Milliliters < 0);
    }

    [Fact]
    public void The_sodium_minimum_is_a_minimum()
    {
        // A minimum: higher half a minute before and after; and the summit of the parabola through three values 3 min apart, whose own error is the
        // third derivative's: 0.05 min.
        var course = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook, TextbookDwells.Strong);
        var (time, sodium) = course.SodiumMinimum();
        foreach (var seconds in new[] { -30, 30 })
        {
            Assert.True(course.DialysateAt(Solutes.Sodium, time + TimeSpan.FromSeconds(seconds)) > sodium);
        }

        double Level(double minutes) => course.Dialysate(Solutes.Sodium, time.TotalMinutes + minutes);
        var summit = 0.5 * (Level(-3) - Level(3)) / (Level(-3) - 2 * Level(0) + Level(3)) * 3;
        Assert.Equal(0, summit, 0.05);
    }

    private static LumpedMembrane WaterAlone(double absorption) => new()
    {
        MassTransfer = SolutePanel.Small.Solutes.ToImmutableDictionary(solute => solute, _ => default(Clearance)),
        SievingCoefficient = 0,
        OsmoticConductanceToGlucose = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(0.003),
        FluidAbsorption = FlowRate.FromMillilitersPerMinute(absorption),
    };

    private static DwellCourse Run(LumpedMembrane membrane, double glucose, double minutes)
    {
        var plasma = PlasmaComposition.Typical with { Glucose = default };
        return DwellSimulation.Run(
            Patient.Example with { Plasma = plasma },
            membrane,
            new(
                DialysisSolution.OfGlucose(glucose), Volume.FromMilliliters(V0), TimeSpan.FromMinutes(minutes),
                ResidualFluid.Used(default, plasma)),
            new() { Integration = new() { RelativeTolerance = 1e-11 } });
    }
}
