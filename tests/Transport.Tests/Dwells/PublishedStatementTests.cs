namespace Transport.Tests.Dwells;

/// <summary>The textbook patient beside published statements: where it agrees, and where it misses.</summary>
/// <remarks>A test whose name says "misses" asserts the miss, so that it is seen when it goes away. Used residual of 300 mL.</remarks>
public sealed class PublishedStatementTests
{
    private static readonly ThreePoreMembrane Textbook = ReferenceMembranes.Textbook;

    private static readonly DwellCourse Weak = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Weak);

    private static readonly DwellCourse Medium = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Medium);

    private static readonly DwellCourse Strong = TextbookDwells.OnUsedResidual(Textbook, TextbookDwells.Strong);

    private static readonly TimeSpan FourHours = TimeSpan.FromHours(4);

    [Fact]
    public void About_ten_millimoles_of_sodium_leave_with_each_deciliter()
    {
        // Rippe et al., Perit Dial Int 2004;24:10 (read): about 10 mmol per dL of ultrafiltrate in 4 h. "About": 15 %.
        // Computed elsewhere: 10.2 at 3.86 %, 11.2 at 2.27 %; half a digit.
        Assert.Equal(10.2, PerDeciliter(Strong), 0.05);
        Assert.Equal(11.2, PerDeciliter(Medium), 0.05);
        Assert.InRange(PerDeciliter(Strong), 8.5, 11.5);
        Assert.InRange(PerDeciliter(Medium), 8.5, 11.5);

        static double PerDeciliter(DwellCourse course) =>
            course.RemovedAt(Solutes.Sodium, FourHours).Millimoles / (course.NetUltrafiltrationAt(FourHours).Milliliters / 100);
    }

    [Fact]
    public void Half_to_six_tenths_of_a_small_solute_goes_with_the_first_water()
    {
        // Sieving of small solutes 0.5 to 0.6 (Rippe et al. 1991 and 1992, read). For a solute that the pores hardly reflect it is
        // the share of water that does not go through ultrasmall pores; 0.58 computed elsewhere with sodium's reflection.
        var sieving = Strong.SievingCoefficientAt(Solutes.Sodium, TimeSpan.Zero);
        Assert.InRange(sieving, 0.5, 0.6);
        Assert.Equal(0.58, sieving, 0.005);
    }

    [Fact]
    public void Four_to_five_tenths_of_the_early_ultrafiltrate_is_free_water()
    {
        // Rippe, Nephrol Dial Transplant 2008;23:2147 (memory): 40 to 45 % of early ultrafiltrate at 3.86 %; half in a review (read). A digit of
        // room below: 0.395. Computed elsewhere: 0.40, half a digit.
        var share = Strong.PoreVolumesAt(TimeSpan.FromHours(1)).FreeWaterFraction!.Value;
        Assert.InRange(share, 0.395, 0.5);
        Assert.Equal(0.40, share, 0.005);
    }

    [Fact]
    public void Ultrafiltration_misses_on_the_high_side_with_the_strongest_glucose()
    {
        // A miss, stated. 762 mL by tracer volume, Nephrol Dial Transplant 1989;4:805; 675 ± 308 mL drained, Perit Dial Int 2019 (both read).
        // The textbook patient: 20 to 40 % more, still within one SD of the drained series. 930 computed elsewhere, half of its last digit.
        var found = Strong.Ultrafiltration(240);
        Assert.Equal(930, found, 5.0);
        Assert.InRange(found / 762, 1.20, 1.25);
        Assert.InRange(found / 675, 1.35, 1.40);
        Assert.InRange(found, 675 - 308, 675 + 308);
    }

    [Fact]
    public void The_course_of_a_tracer_series_is_met_early_and_missed_late()
    {
        // 18 people, 3.86 %, tracer volume, Nephrol Dial Transplant 1989;4:805 (read): about 90 % of the ultrafiltrate of 240 min by 90 min, level from 120
        // to 240 min, 1.2 ± 0.7 mL/min reabsorbed from 240 to 360 min. Misses, stated: the textbook patient has 62 to 66 % by 90 min and still gains
        // 0.6 mL/min after 240 min, since its glucose stays longer. The older, faster set is nearer: it falls by then.
        Assert.InRange(Strong.Ultrafiltration(90) / Strong.Ultrafiltration(240), 0.60, 0.68);
        Assert.InRange((Strong.Ultrafiltration(360) - Strong.Ultrafiltration(240)) / 120, 0.4, 0.8);
        Assert.True(Strong.PeakUltrafiltration().Time > TimeSpan.FromMinutes(360));
    }

    [Fact]
    public void Ultrafiltration_with_medium_glucose_is_within_the_published_spread()
    {
        // 348 ± 215 mL at 2.27 %, 4 h, n 58 (read); 395 computed elsewhere.
        Assert.InRange(Medium.Ultrafiltration(240), 348 - 215, 348 + 215);
        Assert.Equal(395, Medium.Ultrafiltration(240), 1.5);
    }

    [Fact]
    public void The_peak_with_weak_glucose_has_the_right_height_and_comes_late()
    {
        // Simulated curves of the three-pore papers: peak about 100 mL at 60 to 100 min (memory, low). Height within 10 %; the time is a miss,
        // stated: 147 min.
        var (time, height) = Weak.PeakUltrafiltration();
        Assert.InRange(height.Milliliters, 90, 110);
        Assert.Equal(147, time.TotalMinutes, 2.0);
    }

    [Fact]
    public void The_equilibration_test_of_the_textbook_patient_meets_creatinine_and_misses_glucose()
    {
        // n 758 incident patients, 3.86 %, 4 h, Perit Dial Int 2019 (read): D/P creatinine 0.73 ± 0.10; D/D0 glucose 0.25 ± 0.08.
        // Creatinine within one SD. Glucose is a miss, stated: 1.1 SD high (0.342 computed elsewhere, half a digit): this glucose diffuses too slowly.
        Assert.InRange(Strong.OverPlasma(Solutes.Creatinine, 240), 0.63, 0.83);
        Assert.Equal(0.715, Strong.OverPlasma(Solutes.Creatinine, 240), 5e-4);
        var glucose = Strong.GlucoseToInitialAt(FourHours);
        Assert.Equal(0.342, glucose, 5e-4);
        Assert.InRange((glucose - 0.25) / 0.08, 1.0, 1.3);
    }

    [Fact]
    public void The_sodium_dip_is_within_the_published_spread()
    {
        // 8.4 ± 3.8 mmol/L at 1 h, the same series (read); 6.6 computed elsewhere, half a digit and the rounding of its two terms.
        var dip = Strong.Dialysate(Solutes.Sodium, 0) - Strong.Dialysate(Solutes.Sodium, 60);
        Assert.InRange(dip, 8.4 - 3.8, 8.4 + 3.8);
        Assert.Equal(6.6, dip, 0.1);
    }

    [Fact]
    public void Sodium_falls_during_the_first_hours_only_with_ultrasmall_pores()
    {
        // Dilution phase 50 to 100 min in print (Rippe et al. 1991, read). The textbook minimum is later, 175 min (computed), since sodium's permeability
        // is small; a miss, stated. Without ultrasmall pores there is no dip.
        Assert.InRange(Strong.SodiumMinimum().Time.TotalMinutes, 100, 180);
        var without = TextbookDwells.OnUsedResidual(Textbook with { Pores = new(43, 250, 0, 0.08) }, TextbookDwells.Strong);
        Assert.Equal(0, without.SodiumMinimum().Time.TotalMinutes, 0.01);
    }

    [Fact]
    public void The_large_pore_flow_misses_on_the_low_side()
    {
        // A miss, stated: 0.112 ± 0.052 mL/min/1.73 m² (Johansson and Haraldsson 2006, read). The textbook patient: 0.035 to 0.062, 1 to 1.5 SD low.
        var perMinute = Strong.PoreVolumesAt(FourHours).Large.Milliliters / 240;
        var early = Strong.PoreFlowsAt(TimeSpan.FromMinutes(1)).Large.MillilitersPerMinute;
        Assert.InRange(perMinute, 0.035, 0.062);
        Assert.InRange(early, 0.035, 0.0625);
        Assert.InRange((perMinute - 0.112) / 0.052, -1.5, -0.9);
    }

    [Fact]
    public void Free_water_estimated_from_sodium_is_low_by_a_sixth()
    {
        // Water that carried the removed sodium is small-pore fluid; the rest of the ultrafiltrate is free water. Computed elsewhere: 39.67 mmol, 283 mL,
        // 154 mL by this estimate against 184 mL in truth (half a digit), since some sodium diffuses.
        var hour = TimeSpan.FromHours(1);
        var small = Strong.RemovedAt(Solutes.Sodium, hour).Millimoles / 140 * 1000;
        Assert.Equal(39.67, Strong.RemovedAt(Solutes.Sodium, hour).Millimoles, 0.05);
        Assert.Equal(154, Strong.Ultrafiltration(60) - small, 1.0);
        Assert.Equal(184, Strong.PoreVolumesAt(hour).Ultrasmall.Milliliters, 1.0);
    }

    [Fact]
    public void A_larger_surface_peaks_earlier_and_as_high()
    {
        // Rippe, Simonsen and Stelin, Adv Perit Dial 1991;7:3 (read): earlier peak, height little changed. Fresh residual, as there; computed elsewhere: 1197 mL at
        // 217 min against 1195 mL at 360 min and still rising. "Little": 5 %.
        var base360 = TextbookDwells.OnFreshResidual(Textbook, TextbookDwells.Strong, minutes: 360).PeakUltrafiltration();
        var doubled = TextbookDwells.OnFreshResidual(Textbook.With(2, 2, 2), TextbookDwells.Strong, minutes: 360).PeakUltrafiltration();
        Assert.True(doubled.Time < base360.Time);
        Assert.Equal(217, doubled.Time.TotalMinutes, 2.0);
        Assert.Equal(1197, doubled.NetUltrafiltration.Milliliters, 1.5);
        Assert.InRange(doubled.NetUltrafiltration / base360.NetUltrafiltration, 0.95, 1.05);
    }

    [Fact]
    public void More_area_or_faster_glucose_alone_peaks_earlier_and_lower()
    {
        // The same paper (read). A0/Δx alone doubled, fresh residual: 647 mL at 201 min computed elsewhere.
        var reference = TextbookDwells.OnFreshResidual(Textbook, TextbookDwells.Strong).PeakUltrafiltration();
        var area = TextbookDwells.OnFreshResidual(Textbook.With(area: 2), TextbookDwells.Strong).PeakUltrafiltration();
        var glucose = TextbookDwells.OnFreshResidual(Textbook with { GlucosePermeabilityScale = 2 }, TextbookDwells.Strong).PeakUltrafiltration();
        var fill = TextbookDwells.OnFreshResidual(Textbook, TextbookDwells.Strong, fill: 1200).PeakUltrafiltration();
        Assert.Equal(647, area.NetUltrafiltration.Milliliters, 1.5);
        Assert.Equal(201, area.Time.TotalMinutes, 2.0);
        foreach (var changed in new[] { area, glucose, fill })
        {
            Assert.True(changed.Time < reference.Time);
            Assert.True(changed.NetUltrafiltration < reference.NetUltrafiltration);
        }
    }

    [Theory]
    [InlineData(TextbookDwells.Weak, "slow", 86, 135, 166)]
    [InlineData(TextbookDwells.Weak, "average", 74, 97, 62)]
    [InlineData(TextbookDwells.Weak, "fast", 59, 53, -39)]
    [InlineData(TextbookDwells.Medium, "slow", 243, 394, 555)]
    [InlineData(TextbookDwells.Medium, "average", 220, 325, 376)]
    [InlineData(TextbookDwells.Medium, "fast", 191, 246, 198)]
    [InlineData(TextbookDwells.Strong, "slow", 501, 817, 1189)]
    [InlineData(TextbookDwells.Strong, "average", 463, 706, 910)]
    [InlineData(TextbookDwells.Strong, "fast", 415, 574, 616)]
    public void Ultrafiltration_by_hour_and_transfer_rate_has_the_shape_of_a_table_with_finite_fills(
        double glucose, string transfer, double one, double two, double four)
    {
        // Computed elsewhere with a fill phase and residual 200 mL, only A0/Δx changed (14,000, 25,000, 40,000 cm). This dwell fills at once, so the table is
        // a check of shape: 10 % and 25 mL, about what ten minutes of filling are worth.
        var area = transfer switch { "slow" => 14_000, "average" => 25_000, _ => 40_000 };
        var course = TextbookDwells.OnUsedResidual(
            Textbook with { DiffusionArea = DiffusionArea.FromCentimeters(area) }, glucose, residual: 200);
        Assert.InRange(course.Ultrafiltration(60), one - 25 - 0.1 * Math.Abs(one), one + 25 + 0.1 * Math.Abs(one));
        Assert.InRange(course.Ultrafiltration(120), two - 25 - 0.1 * Math.Abs(two), two + 25 + 0.1 * Math.Abs(two));
        Assert.InRange(course.Ultrafiltration(240), four - 25 - 0.1 * Math.Abs(four), four + 25 + 0.1 * Math.Abs(four));
    }

    [Fact]
    public void Slow_transfer_gains_with_the_hours_and_fast_transfer_loses()
    {
        // The lesson of that table: slow transfer gives most at every hour; fast transfer with weak glucose ends negative within four hours.
        double[] areas = [14_000, 25_000, 40_000];
        foreach (var glucose in new[] { TextbookDwells.Weak, TextbookDwells.Medium, TextbookDwells.Strong })
        {
            var courses = areas.Select(area => TextbookDwells.OnUsedResidual(
                Textbook with { DiffusionArea = DiffusionArea.FromCentimeters(area) }, glucose, residual: 200, minutes: 720)).ToArray();
            foreach (var hours in new[] { 1, 2, 4, 6, 8, 12 })
            {
                Assert.True(courses[0].Ultrafiltration(60 * hours) > courses[1].Ultrafiltration(60 * hours));
                Assert.True(courses[1].Ultrafiltration(60 * hours) > courses[2].Ultrafiltration(60 * hours));
            }

            Assert.Equal(glucose != TextbookDwells.Weak, courses[2].Ultrafiltration(240) > 0);
            Assert.True(courses[2].PeakUltrafiltration().Time < courses[1].PeakUltrafiltration().Time);
        }
    }
}
