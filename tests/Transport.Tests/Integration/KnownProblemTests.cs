namespace Transport.Tests.Integration;

/// <summary>The integrator on problems whose solution is known: is the error delivered near the one asked for?</summary>
public sealed class KnownProblemTests
{
    public static TheoryData<string, double> Cases()
    {
        var data = new TheoryData<string, double>();
        foreach (var problem in All)
        {
            foreach (var tolerance in new[] { 1e-6, 1e-7, 1e-8, 1e-9, 1e-10 })
            {
                data.Add(problem.Name, tolerance);
            }
        }

        return data;
    }

    private static Problem[] All =>
    [
        Problem.Oscillator, Problem.A1, Problem.A2, Problem.A3, Problem.A4, Problem.A5, Problem.B1, Problem.B2, Problem.B3, Problem.B4,
        Problem.B5,
    ];

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_error_is_at_most_twenty_times_the_tolerance(string name, double tolerance)
    {
        // The norm is the one in which the step is controlled: error over tolerance times (scale + size), root mean square of the components,
        // here its largest value over the ends and the middles of all steps (so the dense output is held to the same).
        // Twenty: errors of some tens of steps add up, and these problems do not amplify them.
        var problem = All.Single(candidate => candidate.Name == name);
        var observer = new Compare(problem, tolerance);
        var integrator = new DormandPrince853<Real, Problem>(problem);
        var reached = integrator.Run(0, problem.End, problem.Start(), new() { RelativeTolerance = tolerance }, ref observer);
        Assert.Equal(problem.End, reached);
        Assert.InRange(observer.Ratio, 0, 20);
    }

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.9)]
    public void Orbits_are_followed_although_they_amplify_errors(double eccentricity)
    {
        // Class D of Hull et al. (memory), Kepler's equation as solution. An error along an orbit grows with time and with the speed at the
        // near point, 1/(1 − e)^1.5 = 30 at e = 0.9: three orbits may return 1e4 tolerances. The steps must follow: more of them where it is sharp.
        var problem = Problem.D(eccentricity);
        var observer = new Compare(problem, 1e-10);
        new DormandPrince853<Real, Problem>(problem).Run(0, problem.End, problem.Start(), new() { RelativeTolerance = 1e-10 }, ref observer);
        Assert.InRange(observer.Ratio, 0, 1e4);
        Assert.True(observer.Longest > (eccentricity > 0.8 ? 5 : 1) * observer.Shortest);
    }

    [Theory]
    [InlineData(1e-6)]
    [InlineData(1e-8)]
    [InlineData(1e-10)]
    public void A_smaller_tolerance_costs_more_evaluations_as_the_order_says(double tolerance)
    {
        // Order 8: a hundredth of the tolerance needs 100^(1/8) = 1.8 times the steps; 1.3 to 2.4 allows for whole steps.
        var cost = Evaluations(tolerance / 100) / (double)Evaluations(tolerance);
        Assert.InRange(cost, 1.3, 2.4);

        static long Evaluations(double tolerance)
        {
            var problem = Problem.A3;
            var integrator = new DormandPrince853<Real, Problem>(problem);
            var count = new StepCount();
            integrator.Run(0, problem.End, problem.Start(), new() { RelativeTolerance = tolerance }, ref count);
            return integrator.Evaluations;
        }
    }

    private struct Compare(Problem problem, double tolerance) : IStepObserver<Real>
    {
        private readonly double? invariant = problem.Invariant?.Invoke(0, problem.Initial);

        public double Ratio { get; private set; }

        public double Longest { get; private set; }

        public double Shortest { get; private set; } = double.PositiveInfinity;

        public double Observe(ref DenseStep<Real> step)
        {
            Longest = Math.Max(Longest, step.Length);

            // The last step is as long as what is left.
            Shortest = step.End < problem.End ? Math.Min(Shortest, step.Length) : Shortest;
            Look(ref step, step.Start + 0.5 * step.Length);
            Look(ref step, step.End);
            return double.NaN;
        }

        private void Look(ref DenseStep<Real> step, double t)
        {
            var state = new Real[problem.Dimension];
            step.State(t, state);
            double[] found = [.. state.Select(component => component.Value)];
            if (problem.Solution is { } solution)
            {
                var expected = solution(t);
                var squares = 0.0;
                for (var i = 0; i < expected.Length; i++)
                {
                    squares += Math.Pow((found[i] - expected[i]) / (tolerance * (problem.Scale + Math.Abs(expected[i]))), 2);
                }

                Ratio = Math.Max(Ratio, Math.Sqrt(squares / expected.Length));
            }
            else
            {
                var now = problem.Invariant!(t, found);
                Ratio = Math.Max(Ratio, Math.Abs(now - invariant!.Value) / (tolerance * (problem.Scale + Math.Abs(invariant.Value))));
            }
        }
    }
}
