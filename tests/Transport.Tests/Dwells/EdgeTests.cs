namespace Transport.Tests.Dwells;

/// <summary>Dwells at the edges of the equations, each once found wrong by a property test.</summary>
public sealed class EdgeTests
{
    [Fact]
    public void A_cavity_that_would_run_empty_is_refused()
    {
        // 10 mL/min of lymph from 235 + 65 mL: empty after half an hour. No volume below zero, nothing partial.
        var membrane = (ReferenceMembranes.Textbook with { UltrafiltrationCoefficient = default }).Lymph(10);
        var failure = Assert.Throws<IntegrationException>(() => TextbookDwells.OnUsedResidual(membrane, 75.5, fill: 235, residual: 65));
        Assert.Equal(30, failure.Time.TotalMinutes, 0.01);
        Assert.Equal(1, TextbookDwells.OnUsedResidual(membrane, 75.5, fill: 235, residual: 65, minutes: 29.9).Milliliters(29.9), 1e-6);
    }

    [Fact]
    public void A_solute_that_is_nowhere_does_not_disturb_the_others()
    {
        // No urea in plasma, fluid or residual: it stays zero, and the dwell is that of a trace of urea (1e-9 mmol/L draws 2e-8 mmHg).
        DwellCourse Course(double urea)
        {
            var plasma = PlasmaComposition.Typical with { Urea = Concentration.FromMillimolesPerLiter(urea) };
            var dwell = new Dwell(
                DialysisSolution.Glucose227, Volume.FromMilliliters(2000), TimeSpan.FromHours(4),
                ResidualFluid.Used(Volume.FromMilliliters(200), plasma));
            return DwellSimulation.Run(Patient.Example with { Plasma = plasma }, ReferenceMembranes.Textbook, dwell);
        }

        var (none, trace) = (Course(0), Course(1e-9));
        Assert.Equal(0, none.Dialysate(Solutes.Urea, 240));
        Assert.Equal(trace.Ultrafiltration(240), none.Ultrafiltration(240), 1e-4);
    }

    [Theory]
    [InlineData(1e-4)]
    [InlineData(3e-3)]
    public void A_urea_ratio_below_its_large_pore_part_leaves_that_part(double ratio)
    {
        // PS of urea's large pores 0.047 mL/min is 0.0039 of creatinine's permeability: smaller ratios are that, and none is negative.
        var tiny = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook with { UreaToCreatininePermeability = ratio }, 126.0);
        var large = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook with { UreaToCreatininePermeability = 1e-9 }, 126.0);
        Assert.Equal(large.Dialysate(Solutes.Urea, 240), tiny.Dialysate(Solutes.Urea, 240), 1e-9);
    }

    [Fact]
    public void Every_dwell_can_be_asked_for_its_own_end()
    {
        // Start plus length of the last step may miss the duration by a rounding; about one duration in four of these did.
        for (var ticks = 1; ticks <= 400; ticks++)
        {
            var minutes = 0.05 + 0.6180339887 * ticks;
            var course = TextbookDwells.OnUsedResidual(ReferenceMembranes.Textbook, 126.0, minutes: minutes);
            Assert.True(course.VolumeAt(course.Dwell.Duration).Milliliters > 2300);
            Assert.Throws<ArgumentOutOfRangeException>(() => course.VolumeAt(course.Dwell.Duration + TimeSpan.FromTicks(1)));
        }
    }
}
