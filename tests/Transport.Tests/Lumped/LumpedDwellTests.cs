using System.Collections.Immutable;
using Transport.Tests.Dwells;

namespace Transport.Tests.Lumped;

/// <summary>The classical membrane: closed solutions, balances, limits, printed figures, and where it parts from the three-pore model.</summary>
public sealed class LumpedDwellTests
{
    private static readonly LumpedMembrane Typical = LumpedMembrane.Typical;

    private static readonly LumpedMembrane Still = Typical with
    {
        OsmoticConductanceToGlucose = default,
        OsmoticConductanceToSodium = default,
        FluidAbsorption = default,
    };

    [Theory]
    [InlineData("urea", 18)]
    [InlineData("creatinine", 8.8)]
    [InlineData("glucose", 11)]
    [InlineData("sodium", 5)]
    public void At_constant_volume_diffusion_is_exponential(string name, double transfer)
    {
        // Closed solution D = P + (D0 − P) e^(−K t / V) of 2300 mL. Tolerance: 1e-8 of the integration, times ten.
        var course = Run(Still);
        var solute = Known(name);
        var plasma = course.DialysateAt(solute, TimeSpan.Zero).MillimolesPerLiter / course.DialysateToPlasmaAt(solute, TimeSpan.Zero);
        foreach (var minutes in new[] { 7.0, 60, 240, 480 })
        {
            var initial = course.DialysateAt(solute, TimeSpan.Zero).MillimolesPerLiter;
            var expected = plasma + (initial - plasma) * Math.Exp(-transfer * minutes / 2300);
            Assert.Equal(expected, course.DialysateAt(solute, TimeSpan.FromMinutes(minutes)).MillimolesPerLiter, 1e-7 * plasma + 1e-7 * initial);
        }
    }

    [Fact]
    public void Volume_is_what_was_there_and_was_drawn_less_what_was_absorbed()
    {
        // Balance: absorption is 1.5 mL/min whatever else happens. 1e-6 mL: linear in the state, so only rounding.
        var course = Run(Typical);
        foreach (var minutes in new[] { 30.0, 240, 480 })
        {
            var time = TimeSpan.FromMinutes(minutes);
            Assert.Equal(
                2300 + course.TranscapillaryUltrafiltrationAt(time).Milliliters - 1.5 * minutes, course.VolumeAt(time).Milliliters, 1e-6);
        }
    }

    [Fact]
    public void Absorption_alone_takes_volume_and_leaves_concentrations()
    {
        // Fluid is lost as it is. 1e-7 of each concentration.
        var course = Run(WithoutTransfer(Still) with { FluidAbsorption = Typical.FluidAbsorption });
        Assert.Equal(2300 - 1.5 * 240, course.VolumeAt(TimeSpan.FromMinutes(240)).Milliliters, 1e-6);
        foreach (var solute in SolutePanel.Small.Solutes)
        {
            Assert.Equal(course.DialysateToPlasmaAt(solute, TimeSpan.Zero), course.DialysateToPlasmaAt(solute, TimeSpan.FromMinutes(240)), 1e-6);
        }
    }

    [Fact]
    public void Water_alone_dilutes_and_keeps_every_amount()
    {
        // No sieved solute, no diffusion, no loss: amounts stay to rounding while the volume rises.
        var course = Run(WithoutTransfer(Typical) with { SievingCoefficient = 0, FluidAbsorption = default });
        Assert.True(course.NetUltrafiltrationAt(TimeSpan.FromMinutes(240)).Milliliters > 500);
        foreach (var solute in SolutePanel.Small.Solutes)
        {
            Assert.Equal(0, course.RemovedAt(solute, TimeSpan.FromMinutes(240)).Micromoles, 1e-6);
        }
    }

    [Fact]
    public void Sodium_dips_only_where_the_ultrafiltrate_is_sieved()
    {
        // With sieving 1 fluid brings the mean of both sides, which is above dialysate: sodium cannot fall. In the three-pore model the same
        // is asked of a membrane without ultrasmall pores; with them both models dip.
        Assert.True(Dip(Run(Typical with { SievingCoefficient = 1 })) <= 0);
        Assert.True(Dip(Run(Typical)) > 3);
        var hour = TimeSpan.FromMinutes(60);
        var pores = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook, 214.3);
        Assert.True(pores.DialysateAt(Solutes.Sodium, TimeSpan.Zero) > pores.DialysateAt(Solutes.Sodium, hour));
        var blind = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook with { Pores = new(43, 250, 0, 0.08) }, 214.3);
        Assert.True(blind.DialysateAt(Solutes.Sodium, TimeSpan.Zero) < blind.DialysateAt(Solutes.Sodium, hour));

        static double Dip(DwellCourse course) => (course.DialysateAt(Solutes.Sodium, TimeSpan.Zero)
            - course.DialysateAt(Solutes.Sodium, TimeSpan.FromMinutes(60))).MillimolesPerLiter;
    }

    [Theory]
    [InlineData(60)]
    [InlineData(240)]
    [InlineData(480)]
    public void Both_models_order_strengths_and_fast_membranes_alike(double minutes)
    {
        // Direction only. A stronger solution draws more at every time; twice the glucose transfer draws less.
        double Lumped(LumpedMembrane membrane, double glucose) => Run(membrane, glucose).NetUltrafiltrationAt(TimeSpan.FromMinutes(minutes)).Milliliters;
        double Pores(ThreePoreMembrane membrane, double glucose) => TextbookDwells.OnUsedResidual(membrane, glucose).Ultrafiltration(minutes);
        var (fast, fastPores) = (Typical with
        {
            MassTransfer = Typical.MassTransfer.SetItem(Solutes.Glucose, Clearance.FromMillilitersPerMinute(22)),
        }, ReferenceMembranes.Textbook with { GlucosePermeabilityScale = 2 });

        Assert.True(Lumped(Typical, 75.5) < Lumped(Typical, 126) && Lumped(Typical, 126) < Lumped(Typical, 214.3));
        Assert.True(Pores(ReferenceMembranes.Textbook, 75.5) < Pores(ReferenceMembranes.Textbook, 126));
        Assert.True(Lumped(fast, 214.3) < Lumped(Typical, 214.3));
        Assert.True(Pores(fastPores, 214.3) < Pores(ReferenceMembranes.Textbook, 214.3));
    }

    [Fact]
    public void Late_in_a_weak_dwell_it_loses_its_absorption_where_the_pores_compute_their_own()
    {
        // Where they part. Without a gradient the classical membrane loses what it says, 1.5 mL/min; glucose that is left still draws a little,
        // and sodium of the cavity below plasma's takes a little more away: 0.2 mL/min either way. Textbook pores lose about 1.1 (computed).
        var course = Run(Typical, 75.5, 960);
        double Rate(Func<TimeSpan, Volume> volume) =>
            (volume(TimeSpan.FromMinutes(900)) - volume(TimeSpan.FromMinutes(960))).Milliliters / 60;
        Assert.Equal(1.5, Rate(course.VolumeAt), 0.2);
        Assert.Equal(1.1, Rate(TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook, 75.5, minutes: 960).VolumeAt), 0.2);
    }

    [Fact]
    public void The_typical_dwell_agrees_with_a_second_program()
    {
        // 3.86 %, computed with a separate program from the equations, explicit Euler in steps of 0.02 min. Half a printed digit and as much again
        // for that method.
        var course = Run(Typical);
        var (hour, end) = (TimeSpan.FromMinutes(60), TimeSpan.FromMinutes(240));
        Assert.Equal(592, course.NetUltrafiltrationAt(end).Milliliters, 1.0);
        Assert.Equal(0.597, course.DialysateToPlasmaAt(Solutes.Creatinine, end), 0.001);
        Assert.Equal(0.314, course.GlucoseToInitialAt(end), 0.001);
        Assert.Equal(
            8.21, (course.DialysateAt(Solutes.Sodium, TimeSpan.Zero) - course.DialysateAt(Solutes.Sodium, hour)).MillimolesPerLiter, 0.01);
    }

    [Fact]
    public void The_typical_membrane_returns_a_mean_test_but_for_creatinine()
    {
        // 3.86 %, 4 h, n 758 (read): D/D0 0.25 ± 0.08, ultrafiltration 675 ± 308 mL, dip at 60 min 8.4 ± 3.8 mmol/L: within one standard deviation.
        // A miss, stated: D/P creatinine 0.73 ± 0.10 there, and 0.70 (0.52 to 0.88) in the series that its 8.8 mL/min is from (both read). The
        // model gives 0.60: inside the range, below the first by more than a standard deviation. Its numbers come from several papers, and it
        // takes plasma as measured.
        var course = Run(Typical);
        var (hour, end) = (TimeSpan.FromMinutes(60), TimeSpan.FromMinutes(240));
        Assert.InRange(course.GlucoseToInitialAt(end), 0.17, 0.33);
        Assert.InRange(course.NetUltrafiltrationAt(end).Milliliters, 367, 983);
        Assert.InRange(
            (course.DialysateAt(Solutes.Sodium, TimeSpan.Zero) - course.DialysateAt(Solutes.Sodium, hour)).MillimolesPerLiter, 4.6, 12.2);
        Assert.InRange(course.DialysateToPlasmaAt(Solutes.Creatinine, end), 0.52, 0.63);
    }

    [Fact]
    public void A_smaller_person_with_smaller_fluids_has_the_same_concentrations()
    {
        // Everything extensive by one factor: similarity, at the integration's tolerance.
        var size = Area.FromSquareMeters(1.73 * 0.7);
        var (whole, part) = (Run(Typical), Run(Typical.ScaledTo(size), scale: 0.7));
        var end = TimeSpan.FromMinutes(240);
        Assert.Equal(0.7 * whole.VolumeAt(end).Milliliters, part.VolumeAt(end).Milliliters, 1e-4);
        Assert.All(SolutePanel.Small.Solutes, solute => Assert.Equal(whole.DialysateToPlasmaAt(solute, end), part.DialysateToPlasmaAt(solute, end), 1e-7));
    }

    [Fact]
    public void What_cannot_be_meant_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Typical with { SievingCoefficient = 1.1 });
        Assert.Throws<ArgumentOutOfRangeException>(() => Typical with { FluidAbsorption = FlowRate.FromMillilitersPerMinute(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(
            () => Typical with { MassTransfer = Typical.MassTransfer.SetItem(Solutes.Urea, Clearance.FromMillilitersPerMinute(-1)) });
        Assert.Throws<ArgumentException>(() => Run(Typical with { MassTransfer = Typical.MassTransfer.Remove(Solutes.Urea) }));

        // 1.5 mL/min empties 2.3 L in a little more than a day when nothing is drawn: nothing partial is returned.
        Assert.Throws<IntegrationException>(() => Run(Still with { FluidAbsorption = Typical.FluidAbsorption }, minutes: 2000));
    }

    private static LumpedMembrane WithoutTransfer(LumpedMembrane membrane) => membrane with
    {
        MassTransfer = membrane.MassTransfer.ToImmutableDictionary(pair => pair.Key, _ => default(Clearance)),
    };

    private static Solute Known(string name) => SolutePanel.Small.Solutes.Single(solute => solute.Name == name);

    private static DwellCourse Run(LumpedMembrane membrane, double glucose = 214.3, double minutes = 480, double scale = 1) => DwellSimulation.Run(
        Patient.Example with { Plasma = PlasmaComposition.Typical },
        membrane,
        new(
            DialysisSolution.OfGlucose(glucose),
            Volume.FromMilliliters(2000 * scale),
            TimeSpan.FromMinutes(minutes),
            ResidualFluid.Used(Volume.FromMilliliters(300 * scale), PlasmaComposition.Typical)));
}
