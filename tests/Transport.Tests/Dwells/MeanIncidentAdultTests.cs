namespace Transport.Tests.Dwells;

/// <summary>The membrane of the mean incident adult returns the mean test that it was fitted to, at both plasma levels.</summary>
/// <remarks>
/// Target: 3.86 %, 4 h, n 758, Perit Dial Int 2019, doi 10.3747/pdi.2017.00004 (read): D/P creatinine 0.73, D/D0 glucose 0.25, ultrafiltration
/// 675 mL after correction for the bags' overfill. Fill 2000 mL, residual 250 mL of used fluid.
/// </remarks>
public sealed class MeanIncidentAdultTests
{
    private static readonly TimeSpan FourHours = TimeSpan.FromHours(4);

    [Theory]
    [InlineData(PlasmaLevel.AsMeasured)]
    [InlineData(PlasmaLevel.PlasmaWater)]
    public void The_mean_test_is_returned(PlasmaLevel level)
    {
        // Fitted elsewhere to the printed means (computed): half a printed digit of the ratios. The ultrafiltration was fitted with urea by its radius; with
        // urea's own permeability, which counts osmotically, it is some 20 mL more. 25 mL is a twelfth of the series' SD.
        var course = Mean(level, 214.3);
        Assert.Equal(0.73, course.OverPlasma(Solutes.Creatinine, 240), 0.005);
        Assert.Equal(0.25, course.GlucoseToInitialAt(FourHours), 0.005);
        Assert.InRange(course.Ultrafiltration(240), 675 - 5, 675 + 25);
    }

    [Theory]
    [InlineData(PlasmaLevel.AsMeasured, 3.25)]
    [InlineData(PlasmaLevel.PlasmaWater, 3.29)]
    public void With_urea_by_its_radius_the_fit_is_that_computed_elsewhere(PlasmaLevel level, double conductance)
    {
        // Computed elsewhere: 675 mL at 4 h; 60-min sodium 126.5 from 132.2; ultrafiltration 373 and 376 mL, free water 158 and 159 mL at 60 min; peak 678 mL at
        // 269 and 265 min. That fit corrected creatinine alone to plasma water, this membrane urea and glucose too: up
        // to 7 mL and 5 min.
        var membrane = ReferenceMembranes.MeanIncidentAdult(level) with { UreaToCreatininePermeability = null };
        var course = TextbookDwells.OnUsedResidual(membrane, 214.3, residual: 250);
        var measured = level == PlasmaLevel.AsMeasured;
        Assert.Equal(675, course.Ultrafiltration(240), 7.0);
        Assert.Equal(measured ? 373 : 376, course.Ultrafiltration(60), 3.0);
        Assert.Equal(measured ? 158 : 159, course.PoreVolumesAt(TimeSpan.FromHours(1)).Ultrasmall.Milliliters, 2.0);
        Assert.Equal(126.5, course.Dialysate(Solutes.Sodium, 60), 0.05);
        Assert.Equal(132.2, course.Dialysate(Solutes.Sodium, 0), 0.05);
        var (time, height) = course.PeakUltrafiltration();
        Assert.Equal(678, height.Milliliters, 7.0);
        Assert.Equal(measured ? 269 : 265, time.TotalMinutes, 5.0);
        Assert.Equal(conductance, membrane.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury, 0.005);
    }

    [Fact]
    public void Ultrafiltration_by_strength_is_that_of_an_independent_computation_and_its_misses_have_directions()
    {
        // Computed elsewhere with urea 24 mL/min: 1.36 % +14, 2.27 % 265, 3.86 % 698 mL at 4 h (2 mL: urea's permeability there was a round figure).
        // Printed: −75 mL (median, n 138; read) and 348 ± 215, 478 ± 175 mL (read). High at 1.36 %, low at 2.27 %: misses, stated.
        var weak = Mean(PlasmaLevel.AsMeasured, 75.5).Ultrafiltration(240);
        var medium = Mean(PlasmaLevel.AsMeasured, 126.0).Ultrafiltration(240);
        var strong = Mean(PlasmaLevel.AsMeasured, 214.3).Ultrafiltration(240);
        Assert.Equal(14, weak, 2.0);
        Assert.Equal(265, medium, 2.0);
        Assert.Equal(698, strong, 2.0);
        Assert.True(weak > -75 + 50);
        Assert.True(medium < 348 - 50);
    }

    [Theory]
    [InlineData(PlasmaLevel.AsMeasured, 126.0)]
    [InlineData(PlasmaLevel.AsMeasured, 214.3)]
    [InlineData(PlasmaLevel.PlasmaWater, 126.0)]
    [InlineData(PlasmaLevel.PlasmaWater, 214.3)]
    public void Urea_is_nearly_equilibrated_in_four_hours(PlasmaLevel level, double glucose)
    {
        // n 23 crossed over, 2003 congress abstract (read): D/P urea 0.91 ± 0.04 at 2.27 %, 0.90 ± 0.04 at 3.86 %. One SD.
        var printed = glucose < 200 ? 0.91 : 0.90;
        Assert.InRange(Mean(level, glucose).OverPlasma(Solutes.Urea, 240), printed - 0.04, printed + 0.04);
    }

    [Theory]
    [InlineData(PlasmaLevel.AsMeasured)]
    [InlineData(PlasmaLevel.PlasmaWater)]
    public void The_sodium_dip_is_lower_than_the_printed_mean(PlasmaLevel level)
    {
        // Computed elsewhere: 5.7 to 5.8 mmol/L. Printed 8.4 ± 3.8 and 4.7 ± 2.3 (read): between the two. A simulated dip is therefore never held
        // against a clinical threshold.
        var course = Mean(level, 214.3);
        var dip = course.Dialysate(Solutes.Sodium, 0) - course.Dialysate(Solutes.Sodium, 60);
        Assert.InRange(dip, 5.65, 5.85);
        Assert.InRange(dip, 4.7 - 2.3, 4.7 + 2.3);
        Assert.InRange(dip, 8.4 - 3.8, 8.4 + 3.8);
    }

    [Fact]
    public void A_long_day_dwell_with_weak_glucose_ends_clearly_negative()
    {
        // Computed elsewhere: −535 mL after 14 h of 1.36 % (residual 250 used), losing 0.8 to 1.2 mL/min after 6 h. Ten mL: urea's round figure over 14 h.
        var course = TextbookDwells.OnUsedResidual(ReferenceMembranes.MeanIncidentAdult(), TextbookDwells.Weak, minutes: 840, residual: 250);
        Assert.Equal(-535, course.Ultrafiltration(840), 10.0);
        for (var minutes = 360; minutes < 840; minutes += 60)
        {
            Assert.InRange((course.Ultrafiltration(minutes) - course.Ultrafiltration(minutes + 60)) / 60, 0.8, 1.2);
        }
    }

    [Fact]
    public void Three_causes_of_low_ultrafiltration_look_alike_at_four_hours_and_part_at_one_and_eight()
    {
        // Computed elsewhere (urea by its radius), 3.86 %, 1, 4 and 8 h: base 374/676/566; surface × 1.5 329/438/193; conductance × 0.6 228/423/346; loss 1.3 mL/min
        // 313/424/62. "Surface" is A0/Δx alone. 3 mL.
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { UreaToCreatininePermeability = null };
        Check(membrane, 374, 676, 566);
        Check(membrane.With(area: 1.5), 329, 438, 193);
        Check(membrane.With(conductance: 0.6), 228, 423, 346);
        Check(membrane.Lymph(1.3), 313, 424, 62);

        static void Check(ThreePoreMembrane membrane, double one, double four, double eight)
        {
            var course = TextbookDwells.OnUsedResidual(membrane, 214.3, residual: 250);
            Assert.Equal(one, course.Ultrafiltration(60), 3.0);
            Assert.Equal(four, course.Ultrafiltration(240), 3.0);
            Assert.Equal(eight, course.Ultrafiltration(480), 3.0);
        }
    }

    [Fact]
    public void High_plasma_glucose_costs_ultrafiltration()
    {
        // Computed elsewhere: plasma 6 to 20 mmol/L, 2.27 %, 4 h: 244 to 162 mL (urea by its radius). 3 mL.
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { UreaToCreatininePermeability = null };
        Assert.Equal(244, TextbookDwells.OnUsedResidual(membrane, 126.0, residual: 250).Ultrafiltration(240), 3.0);
        Assert.Equal(162, TextbookDwells.OnUsedResidual(membrane, 126.0, residual: 250, plasmaGlucose: 20).Ultrafiltration(240), 3.0);
    }

    private static DwellCourse Mean(PlasmaLevel level, double glucose) =>
        TextbookDwells.OnUsedResidual(ReferenceMembranes.MeanIncidentAdult(level), glucose, residual: 250);
}
