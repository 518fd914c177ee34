namespace Transport.Tests.Integration;

/// <summary>Stopping inside a step, and the integrations that cannot be finished.</summary>
public sealed class StopAndFailureTests
{
    private static readonly IntegrationOptions Fine = new() { RelativeTolerance = 1e-10 };

    [Theory]
    [InlineData(0.001)]
    [InlineData(3.3)]
    [InlineData(11.7)]
    [InlineData(19.999)]
    public void An_observer_stops_the_integration_exactly_where_it_says(double stop)
    {
        // Closed solution exp(sin t). The time is returned to the bit; the state is the dense output's, within twenty tolerances.
        var problem = Problem.A3;
        var observer = new StopAt(stop);
        var state = problem.Start();
        var reached = new DormandPrince853<Real, Problem>(problem).Run(0, problem.End, state, Fine, ref observer);
        Assert.Equal(stop, reached);
        Assert.Equal(Math.Exp(Math.Sin(stop)), state[0].Value, 20 * 1e-10 * (1 + Math.E));
    }

    [Fact]
    public void A_crossing_is_found_by_bisection_in_the_dense_output()
    {
        // cos t falls through zero at π/2 (closed). Error of the time = error of the state over the slope 1.
        var observer = new StopAtZero();
        var state = Problem.Oscillator.Start();
        var reached = new DormandPrince853<Real, Problem>(Problem.Oscillator).Run(0, 20, state, Fine, ref observer);
        Assert.Equal(Math.PI / 2, reached, 20 * 1e-10 * 2);
        Assert.Equal(0, state[0].Value, 1e-12);
    }

    [Fact]
    public void A_run_that_was_stopped_goes_on_to_the_same_end()
    {
        // One workspace, stopped and continued, against one that ran through: each within twenty tolerances of the closed solution.
        var problem = Problem.B4;
        var integrator = new DormandPrince853<Real, Problem>(problem);
        var state = problem.Start();
        var observer = new StopAt(7.1);
        var at = integrator.Run(0, 20, state, Fine, ref observer);
        var rest = new StepCount();
        Assert.Equal(20, integrator.Run(at, 20, state, Fine, ref rest));
        var expected = problem.Solution!(20);
        for (var i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], state[i].Value, 40 * 1e-10 * (1 + Math.Abs(expected[i])));
        }
    }

    [Fact]
    public void An_empty_interval_leaves_the_state_alone()
    {
        var state = Problem.B4.Start();
        var count = new StepCount();
        Assert.Equal(5, new DormandPrince853<Real, Problem>(Problem.B4).Run(5, 5, state, Fine, ref count));
        Assert.Equal(Problem.B4.Initial, state.Select(component => component.Value));
        Assert.Equal(0, count.Steps);
    }

    [Fact]
    public void A_solution_that_ends_before_the_interval_is_not_returned()
    {
        // y′ = y², y(0) = 1 is infinite at t = 1 (closed: 1/(1 − t)).
        var problem = new Problem("explosion", (_, y) => [y[0] * y[0]], [1], 2);
        var failure = Assert.Throws<IntegrationException>(() => Integrate(problem, Fine));
        Assert.InRange(failure.Time.TotalMinutes, 0.99, 1.01);
    }

    [Fact]
    public void A_right_hand_side_that_is_no_number_is_not_integrated()
    {
        var problem = new Problem("no number", (t, y) => [t > 3 ? double.NaN : -y[0]], [1], 10);
        var failure = Assert.Throws<IntegrationException>(() => Integrate(problem, Fine));
        Assert.InRange(failure.Time.TotalMinutes, 2.9, 3.1);
        Assert.Throws<IntegrationException>(() => Integrate(problem with { Rates = (_, _) => [double.NaN] }, Fine));
    }

    [Fact]
    public void Too_many_steps_are_refused()
    {
        var options = Fine with { MaximumSteps = 3 };
        Assert.Throws<IntegrationException>(() => Integrate(Problem.Oscillator, options));
    }

    [Fact]
    public void A_jump_in_the_right_hand_side_is_passed_with_small_steps()
    {
        // y′ = 1 before t = π and −1 after (closed: π − |t − π|), a jump that no step may average away.
        var problem = new Problem("jump", (t, _) => [t < Math.PI ? 1 : -1], [0], 5);
        var state = problem.Start();
        var count = new StepCount();
        new DormandPrince853<Real, Problem>(problem).Run(0, 5, state, new() { RelativeTolerance = 1e-8 }, ref count);
        Assert.Equal(2 * Math.PI - 5, state[0].Value, 20 * 1e-8 * (1 + Math.PI));
    }

    private static void Integrate(Problem problem, IntegrationOptions options)
    {
        var count = new StepCount();
        new DormandPrince853<Real, Problem>(problem).Run(0, problem.End, problem.Start(), options, ref count);
    }

    private readonly struct StopAt(double minutes) : IStepObserver<Real>
    {
        public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

        public double Observe(ref DenseStep<Real> step) => step.End >= minutes ? minutes : double.NaN;
    }

    private readonly struct StopAtZero : IStepObserver<Real>
    {
        public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

        public double Observe(ref DenseStep<Real> step)
        {
            if (step.EndState[0].Value > 0)
            {
                return double.NaN;
            }

            var (low, high) = (step.Start, step.End);
            while (high - low > 1e-14)
            {
                var middle = 0.5 * (low + high);
                if (middle == low || middle == high)
                {
                    break;
                }

                (low, high) = step.Component(0, middle).Value > 0 ? (middle, high) : (low, middle);
            }

            return high;
        }
    }
}
