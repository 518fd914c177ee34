using MathNet.Numerics.Statistics;

namespace Transport.Tests.Dwells;

/// <summary>What is known of icodextrin's dwells, as statements on the calibrated mean adult.</summary>
public sealed class IcodextrinTests
{
    private static readonly DwellCourse Course = IcodextrinDwells.Run();

    // No flow, no diffusion: what happens is what the test lets happen.
    private static readonly ThreePoreMembrane Closed = IcodextrinDwells.Mean with
    {
        UltrafiltrationCoefficient = default,
        DiffusionArea = default,
        SodiumPermeability = default,
        LymphaticRemoval = default,
        PolymerTissueUptake = default,
    };

    [Fact]
    public void Sodium_does_not_dip()
    {
        // Iso-osmolar fluid draws no free water: ultrasmall pores carry a little backwards. Sodium rises from the start; with glucose 3.86 % it falls by 5 or more.
        Assert.Equal(0, Course.SodiumMinimum().Time.TotalMinutes, 0.01);
        Assert.InRange(Course.PoreVolumesAt(TimeSpan.FromHours(16)).Ultrasmall.Milliliters, -100, 0);
        var glucose = IcodextrinDwells.Run(hours: 4, solution: DialysisSolution.Glucose386);
        Assert.True(glucose.Dialysate(Solutes.Sodium, 0) - glucose.SodiumMinimum().Sodium.MillimolesPerLiter > 5);
    }

    [Fact]
    public void Volume_rises_through_sixteen_hours()
    {
        // "Rises linearly" (Front Physiol 2019;10:1326, read). It never falls and is still rising at 16 h, and a straight line explains nine tenths; but half the time
        // brings 69 %, so it bends more than print says. A miss, stated; the two means themselves, 273 and 729 mL, bend as much (37 % in a quarter of the time).
        double[] hours = [.. Enumerable.Range(0, 33).Select(i => 0.5 * i)];
        double[] volumes = [.. hours.Select(Course.UltrafiltrationAt)];
        Assert.Equal(volumes.Order(), volumes);
        Assert.InRange(Math.Pow(Correlation.Pearson(hours, volumes), 2), 0.9, 1);
        Assert.Equal(0.69, Course.UltrafiltrationAt(8) / Course.UltrafiltrationAt(16), 0.005);
    }

    [Fact]
    public void At_sixteen_hours_it_hardly_matters_how_fast_the_membrane_is()
    {
        // No difference between transport types at 16 h (n 20, read). A0/Δx halved and doubled: within 10 %. Glucose 2.27 % at 4 h for comparison: more than half is lost
        // when it doubles.
        var mean = Course.UltrafiltrationAt(16);
        Assert.InRange(IcodextrinDwells.Run(IcodextrinDwells.WithArea(0.5)).UltrafiltrationAt(16) / mean, 0.9, 1.1);
        Assert.InRange(IcodextrinDwells.Run(IcodextrinDwells.WithArea(2)).UltrafiltrationAt(16) / mean, 0.9, 1.1);
        Assert.True(Glucose(2) < 0.5 * Glucose(1));

        static double Glucose(double factor) =>
            IcodextrinDwells.Run(IcodextrinDwells.WithArea(factor), hours: 4, solution: DialysisSolution.Glucose227).UltrafiltrationAt(4);
    }

    [Fact]
    public void At_four_hours_ultrafiltration_rises_with_creatinine_and_with_glucose_it_falls()
    {
        // r = +0.41 with icodextrin, −0.33 with glucose 2.27 % in the same 58 people (read). First one membrane, by A0/Δx alone.
        var byArea = new[] { 0.5, 1, 2 }.Select(factor => IcodextrinDwells.Run(IcodextrinDwells.WithArea(factor), hours: 4).UltrafiltrationAt(4)).ToList();
        Assert.Equal(byArea.Order(), byArea);

        // Then a thousand of the prior. The signs are right. The size is a miss, stated: +0.1 and −0.7; in people LpS goes with A0/Δx, in the prior it does not.
        Assert.InRange(Correlate(IcodextrinPopulation.Courses, 4), 0.03, 0.2);
        Assert.InRange(Correlate(IcodextrinPopulation.Glucose, 4), -0.8, -0.2);
        Assert.InRange(Correlate(IcodextrinPopulation.Courses, 16), -0.15, 0.15);

        static double Correlate(IReadOnlyList<DwellCourse> courses, double hours) => Correlation.Pearson(
            courses.Select(course => course.OverPlasma(Solutes.Creatinine, 240)), courses.Select(course => course.UltrafiltrationAt(hours)));
    }

    [Fact]
    public void Ultrasmall_pores_hardly_matter()
    {
        // Aquaporins take no part in colloid osmosis (J Am Soc Nephrol 2018;29:1875; carriers of the variant lose ultrafiltration with glucose, not with icodextrin,
        // N Engl J Med 2021;385:1570, news report; read). Without them 16 h change by 3 %, and not downwards; glucose 3.86 % loses a fifth or more at 4 h.
        var without = IcodextrinDwells.Mean with { Pores = new(43, 250, 0, 0.08) };
        Assert.InRange(IcodextrinDwells.Run(without).UltrafiltrationAt(16) / Course.UltrafiltrationAt(16), 1, 1.05);
        Assert.True(Strong(without) < 0.8 * Strong(IcodextrinDwells.Mean));

        static double Strong(ThreePoreMembrane membrane) =>
            IcodextrinDwells.Run(membrane, hours: 4, solution: DialysisSolution.Glucose386).UltrafiltrationAt(4);
    }

    [Fact]
    public void Plasma_glucose_matters_little_over_a_long_dwell()
    {
        // 20 instead of 6 mmol/L. It pulls back at first, until the cavity has as much: 7 % of 16 h. At 4 h it is a quarter, no less in mL than with glucose.
        var high = IcodextrinDwells.Run(plasma: PlasmaComposition.Typical with { Glucose = Concentration.FromMillimolesPerLiter(20) });
        Assert.InRange(high.UltrafiltrationAt(16) / Course.UltrafiltrationAt(16), 0.9, 1);
        Assert.InRange(high.UltrafiltrationAt(4) / Course.UltrafiltrationAt(4), 0.7, 0.8);
    }

    [Fact]
    public void The_effluent_has_the_published_osmolality()
    {
        // 288 to 326 mOsm/kg after 9 to 14 h in 12 people (read). Sodium with its anion, urea, glucose and chains, at 12 h.
        var end = TimeSpan.FromHours(12);
        var chains = PolymerDistribution.Icodextrin.Fractions.Sum(fraction => Course.DialysateAt(fraction.Solute, end).MillimolesPerLiter);
        var small = 2 * Course.Dialysate(Solutes.Sodium, 720) + Course.Dialysate(Solutes.Urea, 720) + Course.Dialysate(Solutes.Glucose, 720);
        Assert.InRange(small + chains, 288, 326);
    }

    [Fact]
    public void What_circulates_in_a_regular_user_takes_away_less_than_a_quarter()
    {
        // No figure in print; direction, and that it is no more than a correction.
        var regular = IcodextrinDwells.Run(plasma: IcodextrinDwells.RegularUser);
        Assert.InRange(regular.UltrafiltrationAt(16) / Course.UltrafiltrationAt(16), 0.75, 0.95);
        Assert.True(regular.AbsorbedAt(12) < Course.AbsorbedAt(12));
    }

    [Fact]
    public void Without_flow_lymph_and_tissue_take_up_what_a_closed_solution_says()
    {
        // V = V0 − L t, M = M0 (V/V0)^(1 + K/L): a hundred tolerances of 1e-8.
        const double lymph = 1, uptake = 0.7;
        var membrane = Closed with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(lymph), PolymerTissueUptake = Clearance.FromMillilitersPerMinute(uptake) };
        var course = IcodextrinDwells.Run(membrane, hours: 10);
        var left = (2250 - lymph * 600) / 2250;
        Assert.Equal(-600, course.UltrafiltrationAt(10), 1e-3);
        Assert.Equal(150 * Math.Pow(left, 1 + uptake / lymph), course.PolymerAt(TimeSpan.FromHours(10)).Grams, 150e-6);
    }

    [Fact]
    public void Scission_keeps_the_mass_and_raises_the_osmolality()
    {
        // In a closed cavity: mass to rounding, and the heaviest fraction falls as exp(−k M/5700 t), M 85,509 g/mol to half a digit, so 1e-5 relative.
        const double perHour = 0.05;
        var course = IcodextrinDwells.Run(Closed, scissionPerHour: perHour);
        var heaviest = PolymerDistribution.Icodextrin.Fractions[^1].Solute;
        var before = double.NegativeInfinity;
        for (var hours = 0; hours <= 16; hours += 2)
        {
            var time = TimeSpan.FromHours(hours);
            Assert.Equal(150.0, course.PolymerAt(time).Grams, 1e-9);
            var share = course.DialysateAt(heaviest, time) / course.DialysateAt(heaviest, TimeSpan.Zero);
            Assert.Equal(Math.Exp(-perHour * 85_509 / 5700 * hours), share, 1e-5);
            var chains = PolymerDistribution.Icodextrin.Fractions.Sum(fraction => course.DialysateAt(fraction.Solute, time).MillimolesPerLiter);
            Assert.True(chains > before);
            before = chains;
        }

        // In a membrane more chains draw more water, and maltose appears.
        var open = IcodextrinDwells.Run(scissionPerHour: perHour);
        Assert.True(open.UltrafiltrationAt(16) > Course.UltrafiltrationAt(16) + 50);
        Assert.True(open.DialysateAt(PolymerDistribution.Icodextrin.Fractions[0].Solute, TimeSpan.FromHours(16)).MillimolesPerLiter > 0.01);
        Assert.Equal(0, Course.DialysateAt(PolymerDistribution.Icodextrin.Fractions[0].Solute, TimeSpan.FromHours(16)).MillimolesPerLiter);
    }

    [Fact]
    public void A_glucose_dwell_knows_nothing_of_polymers()
    {
        // To the last bit, whatever the membrane's two numbers and a regular user's plasma.
        var plain = IcodextrinDwells.Run(hours: 4, solution: DialysisSolution.Glucose227);
        var other = IcodextrinDwells.Run(
            IcodextrinDwells.Mean with { PolymerOsmoticEfficiency = 1, PolymerTissueUptake = default },
            IcodextrinDwells.RegularUser,
            4,
            solution: DialysisSolution.Glucose227);
        Assert.Equal(4, plain.Panel.Solutes.Count);
        Assert.Equal(plain.UltrafiltrationAt(4), other.UltrafiltrationAt(4));
        Assert.Equal(0, plain.PolymerAbsorbedAt(TimeSpan.FromHours(4)).Grams);
    }

    [Fact]
    public void What_cannot_take_a_polymer_refuses_it()
    {
        Assert.Throws<ArgumentException>(() => DwellSimulation.Run(Patient.Example, LumpedMembrane.Typical, IcodextrinDwells.Dwell()));
        Assert.Throws<ArgumentException>(() => new ObservedExchange
        {
            Patient = Patient.Example,
            Dwell = IcodextrinDwells.Dwell(),
            Observations = [],
            ResidualLogDeviation = 0.3,
            Findings = [],
        });
        Assert.Throws<ArgumentOutOfRangeException>(() => new DwellOptions { PolymerScissionPerHour = -1 });
    }
}
