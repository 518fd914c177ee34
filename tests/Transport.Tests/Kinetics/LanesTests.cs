namespace Transport.Tests.Kinetics;

/// <summary>Four patients in one vector against each of them alone.</summary>
public sealed class LanesTests
{
    private static readonly Patient Person = Patient.Example;
    private static readonly double[] Minutes = [0, 30, 60, 120, 240, 480];

    private static readonly Dwell Dwell = new(
        DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(8), ResidualFluid.Used(Volume.FromMilliliters(250), Person.Plasma));

    [Theory]
    [InlineData(AreaLaw.Constant, 1e-12)]
    [InlineData(AreaLaw.Exponential, 1e-12)]
    [InlineData(AreaLaw.TwoThirds, 1e-8)]
    public void Four_times_the_same_patient_is_that_patient(AreaLaw law, double difference)
    {
        // The steps are then the same, so only the vector exponential and logarithm may round differently: 1e-12. The two-thirds law has a kink, on
        // which a step ends to within a hundredth of the tolerance; other steps may follow, each within the tolerance of 1e-8.
        var membrane = ReferenceMembranes.MeanIncidentAdult() with { AreaLaw = law };
        var alone = Alone(membrane, 1e-8);
        var four = Four(MembraneEnsemble.Of(membrane), 1e-8);
        for (var i = 0; i < alone.Length; i++)
        {
            for (var lane = 0; lane < Lanes4.Width; lane++)
            {
                Assert.True(
                    Math.Abs(four[i][lane] - alone[i].Value) <= difference * Math.Abs(alone[i].Value) + 1e-12, $"slot {i}: {four[i][lane]:R} {alone[i].Value:R}");
            }
        }
    }

    [Fact]
    public void Four_different_patients_are_each_within_the_tolerance_that_was_asked_for()
    {
        // The step is chosen for the most demanding of the four, so each is at least as good as alone: 20 tolerances, the integrator's own bound.
        const double tolerance = 1e-7;
        var ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Person.BodySurface, 4, seed: 11);
        var four = Four(ensemble, tolerance);
        for (var lane = 0; lane < Lanes4.Width; lane++)
        {
            var exact = Alone(ensemble[lane], 1e-12);
            for (var i = 0; i < exact.Length; i++)
            {
                Assert.True(
                    Math.Abs(four[i][lane] - exact[i].Value) <= 20 * tolerance * (Math.Abs(exact[i].Value) + 1), $"lane {lane}, slot {i}: {four[i][lane]:R} {exact[i].Value:R}");
            }
        }
    }

    private static Real[] Alone(ThreePoreMembrane membrane, double tolerance)
    {
        var kernel = new DwellKernel<Real>(Dwell, Person.Plasma, SolutePanel.Full);
        var states = new Real[Minutes.Length * kernel.Dimension];
        kernel.Run(membrane, FreeParameters<Real>.From(membrane), Real.Of(250), Minutes, states, new() { RelativeTolerance = tolerance });
        return states;
    }

    private static Lanes4[] Four(MembraneEnsemble ensemble, double tolerance)
    {
        var kernel = new DwellKernel<Lanes4>(Dwell, Person.Plasma, SolutePanel.Full);
        var states = new Lanes4[Minutes.Length * kernel.Dimension];
        kernel.Run(ensemble.Center, FourOf(ensemble), Lanes4.Of(250), Minutes, states, new() { RelativeTolerance = tolerance });
        return states;
    }

    private static FreeParameters<Lanes4> FourOf(MembraneEnsemble ensemble)
    {
        var four = default(FreeParameters<Lanes4>);
        for (var lane = 0; lane < Lanes4.Width; lane++)
        {
            four.WriteLane(lane, FreeParameters<Real>.From(ensemble, Math.Min(lane, ensemble.Count - 1)));
        }

        return four;
    }
}
