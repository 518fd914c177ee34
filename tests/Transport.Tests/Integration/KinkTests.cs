using Transport.Tests.Dwells;

namespace Transport.Tests.Integration;

/// <summary>Equations with a kink: a step ends on it, so that the tolerance is kept.</summary>
public sealed class KinkTests
{
    [Theory]
    [InlineData(1e-6)]
    [InlineData(1e-8)]
    [InlineData(1e-10)]
    [InlineData(1e-12)]
    public void A_kink_is_met_and_not_stepped_over(double tolerance)
    {
        // y′ = 1 up to y = 1 and y above: y = t, then e^(t−1), by hand. y doubles beside it, so that the estimate is not a single number.
        // Twenty tolerances in the norm of the control, as on smooth problems.
        Assert.InRange(Error(new Growth(1), tolerance) / tolerance, 0, 20);
    }

    [Fact]
    public void Stepped_over_it_costs_more_than_the_tolerance()
    {
        // What the search for kinks is for: the same equations with the kink kept secret, at the worst of twenty places of it within a step.
        double Worst(int kinks) => Enumerable.Range(0, 20).Max(i => Error(new Growth(kinks), 1e-8, -0.05 * i)) / 1e-8;
        Assert.InRange(Worst(1), 0, 5);
        Assert.InRange(Worst(0), 20, double.PositiveInfinity);
    }

    [Fact]
    public void Meeting_a_kink_costs_a_few_evaluations()
    {
        // One refused step and a short one or two, of twelve evaluations and three for the polynomial: at most sixty more than when it is overlooked.
        Assert.InRange(Evaluations(new Growth(1)) - Evaluations(new Growth(0)), -100, 60);
    }

    [Fact]
    public void A_kink_just_before_the_end_is_met_too()
    {
        // A last step may be a tenth longer than chosen, but not where it was shortened to end on a kink: it would cross it again, for ever. y(1 + e) = exp(e).
        foreach (var beyond in new[] { 1e-9, 1e-6, 1e-3, 0.01, 0.03, 0.1 })
        {
            Real[] state = [Real.Of(0), Real.Of(2)];
            var count = new StepCount();
            new DormandPrince853<Real, Growth>(new(1)).Run(0, 1 + beyond, state, new() { RelativeTolerance = 1e-8 }, ref count);
            Assert.Equal(Math.Exp(beyond), state[0].Value, 20e-8);
        }
    }

    [Theory]
    [InlineData(75.5)]
    [InlineData(126.0)]
    [InlineData(214.0)]
    public void The_two_thirds_law_and_the_loss_into_tissue_keep_the_tolerance(double glucose)
    {
        // Full contact is reached at 2422 mL, on the way up from 2300, with weak glucose left again; loss into tissue begins above 2450 mL (5 mmHg).
        // Against a run at 1e-13: a hundred tolerances, the dense output's bound (see the known problems), of the size of each component.
        var membrane = ReferenceMembranes.Textbook with
        {
            AreaLaw = AreaLaw.TwoThirds,
            TissueConductance = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(0.2),
            TissueThreshold = Pressure.FromMillimetersOfMercury(5),
        };
        var exact = Course(membrane, glucose, 1e-13);
        foreach (var tolerance in new[] { 1e-6, 1e-7, 1e-8, 1e-9, 1e-10 })
        {
            var found = Course(membrane, glucose, tolerance);
            for (var minutes = 0; minutes <= 480; minutes += 12)
            {
                Assert.Equal(1, found.Milliliters(minutes) / exact.Milliliters(minutes), 100 * tolerance);
                Assert.Equal(
                    1, found.Dialysate(Solutes.Glucose, minutes) / exact.Dialysate(Solutes.Glucose, minutes), 200 * tolerance);
            }
        }
    }

    private static DwellCourse Course(ThreePoreMembrane membrane, double glucose, double tolerance) => DwellSimulation.Run(
        Patient.Example with { Plasma = PlasmaComposition.Typical },
        membrane,
        new(
            DialysisSolution.OfGlucose(glucose), Volume.FromLiters(2), TimeSpan.FromHours(8),
            ResidualFluid.Used(Volume.FromMilliliters(300), PlasmaComposition.Typical)),
        new() { Integration = new() { RelativeTolerance = tolerance } });

    private static double Error(Growth system, double tolerance, double start = 0)
    {
        Real[] state = [Real.Of(start), Real.Of(2)];
        var count = new StepCount();
        new DormandPrince853<Real, Growth>(system).Run(0, 3, state, new() { RelativeTolerance = tolerance }, ref count);
        var y = Math.Exp(2 + start);
        return Math.Max(Math.Abs(state[0].Value - y) / (1 + y), Math.Abs(state[1].Value - 2 * Math.Exp(3)) / (1 + 2 * Math.Exp(3)));
    }

    private static long Evaluations(Growth system)
    {
        Real[] state = [Real.Of(0), Real.Of(2)];
        var count = new StepCount();
        var integrator = new DormandPrince853<Real, Growth>(system);
        integrator.Run(0, 3, state, new() { RelativeTolerance = 1e-10 }, ref count);
        return integrator.Evaluations;
    }

    private readonly struct Growth(int kinks) : IOdeSystem<Real>
    {
        public int Dimension => 2;

        public int KinkCount => kinks;

        public Real Kink(int index, ReadOnlySpan<Real> state) => state[0] - Real.Of(1);

        public void Derivatives(double minutes, ReadOnlySpan<Real> state, Span<Real> rates)
        {
            rates[0] = Real.Of(Math.Max(1, state[0].Value));
            rates[1] = state[1];
        }

        public Real Bend(ReadOnlySpan<Real> rates) => Real.Of(0);

        public void AbsoluteScale(Span<double> scale) => scale.Fill(1);
    }
}
