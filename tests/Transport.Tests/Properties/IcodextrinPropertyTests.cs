using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Transport.Tests.Properties;

/// <summary>What is true of every dwell of icodextrin, whatever the membrane.</summary>
public sealed class IcodextrinPropertyTests
{
    private static readonly SolutePanel Panel = SolutePanel.Small.With(PolymerDistribution.Icodextrin);

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Volume_is_what_came_through_the_pores_minus_lymph(PlausibleDwell at)
    {
        // Tissue takes up chains, no volume: conservation as with glucose, to rounding.
        var course = Run(at);
        foreach (var time in Times(at.Dwell.Duration))
        {
            var lymph = at.Membrane.LymphaticRemoval.MillilitersPerMinute * time.TotalMinutes;
            Assert.Equal(course.PoreVolumesAt(time).Total.Milliliters - lymph, course.NetUltrafiltrationAt(time).Milliliters, 1e-6);
        }
    }

    [Property(MaxTest = 30, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void The_mass_of_each_fraction_is_the_integral_of_its_flux(PlausibleDwell at)
    {
        // Rates at the computed states, summed by Simpson's rule over 1-min pieces. Relative 1e-6 of what was instilled: with a transient of 10 min or more
        // the rule's own error is below 1e-7.
        var course = Run(at);
        var system = new ThreePoreSystem<Real>(at.Membrane, FreeParameters<Real>.From(at.Membrane), Panel, CavityContents.Of(at.Plasma, Panel));
        var pieces = (int)Math.Ceiling(at.Dwell.Duration.TotalMinutes);
        var sums = new double[Panel.Count];
        for (var node = 0; node <= 2 * pieces; node++)
        {
            var weight = node == 0 || node == 2 * pieces ? 1 : node % 2 == 1 ? 4 : 2;
            var rates = Rates(system, course, at.Dwell.Duration * (node / (2.0 * pieces)));
            for (var i = 0; i < sums.Length; i++)
            {
                sums[i] += weight * rates[1 + i].Value * at.Dwell.Duration.TotalMinutes / (6 * pieces);
            }
        }

        for (var i = Panel.PolymerStart; i < Panel.Count; i++)
        {
            var (before, after) = (Amount(course, i, TimeSpan.Zero), Amount(course, i, at.Dwell.Duration));
            Assert.Equal(after - before, sums[i], 1e-6 * before + 1e-6);
        }
    }

    [Property(MaxTest = 100, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Nothing_that_comes_in_brings_polymer(PlausibleDwell at)
    {
        // First dwell: plasma has none. Each fraction only falls, light ones faster: they pass the pores more easily.
        var course = Run(at);
        var left = Enumerable.Repeat(double.PositiveInfinity, Panel.Count).ToArray();
        foreach (var time in Times(at.Dwell.Duration))
        {
            var shares = Enumerable.Range(Panel.PolymerStart + 1, Panel.Count - Panel.PolymerStart - 1)
                .Select(i => Amount(course, i, time) / Amount(course, i, TimeSpan.Zero)).ToList();
            for (var i = 0; i < shares.Count; i++)
            {
                Assert.True(shares[i] >= 0 && shares[i] <= left[i] + 1e-9);
                Assert.True(i == 0 || shares[i] >= shares[i - 1] - 1e-9);
                left[i] = shares[i];
            }
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void Sodium_never_falls_by_more_than_one(PlausibleDwell at)
    {
        // Whatever the membrane, plasma sodium 137 to 143 and the cavity's at 132 to 134: at most 1 mmol/L, where glucose 3.86 % takes 5 to 15.
        var plasma = at.Plasma with { Sodium = Concentration.FromMillimolesPerLiter(Math.Clamp(at.Plasma.Sodium.MillimolesPerLiter, 137, 143)) };
        var course = Run(at with { Plasma = plasma });
        var fall = course.DialysateAt(Solutes.Sodium, TimeSpan.Zero) - course.SodiumMinimum().Sodium;
        Assert.True(fall.MillimolesPerLiter <= 1, $"fell by {fall}");
    }

    [Property(MaxTest = 60, Arbitrary = [typeof(PlausibleArbitraries)], Replay = Seeds.Fixed)]
    public void A_person_of_another_size_has_the_same_concentrations(PlausibleDwell at)
    {
        // Everything extensive times 0.7, the tissue's uptake too.
        const double factor = 0.7;
        var dwell = at.Dwell with
        {
            Solution = DialysisSolution.Icodextrin,
            Fill = at.Dwell.Fill * factor,
            Residual = at.Dwell.Residual with { Volume = at.Dwell.Residual.Volume * factor },
        };
        var one = Run(at, 1e-11);
        var two = DwellSimulation.Run(
            Patient.Example with { Plasma = at.Plasma },
            at.Membrane.ScaledTo(Area.FromSquareMeters(factor * 1.73)),
            dwell,
            new() { Integration = new() { RelativeTolerance = 1e-11 } });
        foreach (var time in Times(at.Dwell.Duration))
        {
            Assert.Equal(factor, two.VolumeAt(time) / one.VolumeAt(time), 1e-9);
            Assert.Equal(factor, two.PolymerAt(time) / one.PolymerAt(time), 1e-9);
        }
    }

    [Property(MaxTest = 200, Arbitrary = [typeof(PlausibleArbitraries), typeof(Polymers)], Replay = Seeds.Fixed)]
    public void A_hostile_dwell_is_either_computed_in_full_or_refused(HostileDwell at, HostilePolymer polymer)
    {
        DwellCourse course;
        try
        {
            course = DwellSimulation.Run(
                Patient.Example with { Plasma = at.Plasma with { Others = polymer.InPlasma } },
                at.Membrane with { PolymerOsmoticEfficiency = polymer.Efficiency, PolymerTissueUptake = Clearance.FromMillilitersPerMinute(polymer.Uptake) },
                at.Dwell with { Solution = DialysisSolution.Icodextrin },
                new() { PolymerScissionPerHour = polymer.Scission, Integration = new() { MaximumSteps = 1000 } });
        }
        catch (IntegrationException failure)
        {
            Assert.InRange(failure.Time, TimeSpan.Zero, at.Dwell.Duration);
            return;
        }

        foreach (var time in Times(at.Dwell.Duration))
        {
            Assert.True(course.VolumeAt(time).Milliliters > 0);
            Assert.True(double.IsFinite(course.PolymerAt(time).Grams));
            foreach (var solute in course.Panel.Solutes)
            {
                Assert.True(double.IsFinite(course.DialysateAt(solute, time).MillimolesPerLiter));
            }
        }
    }

    private static DwellCourse Run(PlausibleDwell at, double tolerance = 1e-9) => DwellSimulation.Run(
        Patient.Example with { Plasma = at.Plasma },
        at.Membrane,
        at.Dwell with { Solution = DialysisSolution.Icodextrin },
        new() { Integration = new() { RelativeTolerance = tolerance } });

    private static IEnumerable<TimeSpan> Times(TimeSpan duration) => Enumerable.Range(0, 13).Select(i => duration * (i / 12.0));

    private static double Amount(DwellCourse course, int i, TimeSpan time) =>
        course.DialysateAt(Panel.Solutes[i], time).MillimolesPerLiter * course.VolumeAt(time).Milliliters;

    private static Real[] Rates(ThreePoreSystem<Real> system, DwellCourse course, TimeSpan time)
    {
        var state = new Real[system.Dimension];
        state[0] = Real.Of(course.VolumeAt(time).Milliliters);
        for (var i = 0; i < Panel.Count; i++)
        {
            state[1 + i] = Real.Of(Amount(course, i, time));
        }

        var rates = new Real[system.Dimension];
        system.Derivatives(time.TotalMinutes, state, rates);
        return rates;
    }
}

/// <summary>A polymer's kinetics that only a careless program could meet.</summary>
public sealed record HostilePolymer(double Efficiency, double Uptake, double Scission, bool IsRegularUser)
{
    internal System.Collections.Immutable.ImmutableDictionary<Solute, Concentration> InPlasma =>
        IsRegularUser ? PolymerDistribution.Icodextrin.InPlasmaOfRegularUser() : System.Collections.Immutable.ImmutableDictionary<Solute, Concentration>.Empty;
}

/// <summary>Draws such kinetics.</summary>
public static class Polymers
{
    public static Arbitrary<HostilePolymer> HostilePolymers() => (
        from efficiency in PlausibleArbitraries.LogBetween(1e-3, 10)
        from uptake in Gen.OneOf(Gen.Constant(0.0), PlausibleArbitraries.LogBetween(1e-3, 100))
        from scission in Gen.OneOf(Gen.Constant(0.0), PlausibleArbitraries.LogBetween(1e-3, 10))
        from regular in Gen.Elements(true, false)
        select new HostilePolymer(efficiency, uptake, scission, regular)).ToArbitrary();
}
