namespace Transport.Tests.Dwells;

/// <summary>Albumin where the small pores' flow turns: almost a kink in its rate, a few minutes wide.</summary>
public sealed class TurningFlowTests
{
    [Fact]
    public void Albumin_keeps_the_tolerance_where_the_flow_turns()
    {
        // First principles: a tighter run of the same equations. The bound is the integrator's own, 20 tolerances. A step over the turn that its
        // estimate of the error does not see costs 20,000 of them (1 dwell in 100; computed with the control by Bend left out).
        const double tolerance = 1e-8;
        var patient = Patient.Example;
        var ensemble = PopulationPrior.IncidentAdults().ToEnsemble(patient.BodySurface, 200, seed: 20);
        var residual = ResidualFluid.Used(Volume.FromMilliliters(250), patient.Plasma);
        var turned = 0;
        for (var i = 0; i < ensemble.Count; i++)
        {
            var dwell = new Dwell(DialysisSolution.UsualGlucose[i % 3], Volume.FromLiters(2), TimeSpan.FromHours(4), residual);
            var course = Run(tolerance);
            var exact = Run(1e-13);
            turned += course.PoreFlowsAt(dwell.Duration).Small < FlowRate.FromMillilitersPerMinute(0) ? 1 : 0;
            for (var minutes = 15; minutes <= 240; minutes += 15)
            {
                var time = TimeSpan.FromMinutes(minutes);
                var (found, expected) = (course.DialysateToPlasmaAt(Solutes.Albumin, time), exact.DialysateToPlasmaAt(Solutes.Albumin, time));
                Assert.True(Math.Abs(found / expected - 1) <= 20 * tolerance, $"member {i}, {minutes} min: {found:R} {expected:R}");
            }

            DwellCourse Run(double asked) => DwellSimulation.Run(
                patient, ensemble[i], dwell, new() { Panel = SolutePanel.Full, Integration = new() { RelativeTolerance = asked } });
        }

        Assert.InRange(turned, 80, 199);
    }
}
