using MathNet.Numerics.LinearAlgebra;

namespace Transport.Tests.Fitting.Statistics;

public sealed class LeastSquaresTests
{
    // Two valleys, at x near −1 and +1; the residual 0.2 (x − 1) makes the right one deeper, and its optimum exact.
    private static SumOfSquares TwoValleys => new(1, 2, u => [u[0] * u[0] - 1, 0.2 * (u[0] - 1)]);

    [Fact]
    public void The_deeper_of_two_valleys_wins_wherever_it_is_tried()
    {
        foreach (var starts in new[] { new[] { -2.0, 2 }, new[] { 2.0, -2 }, new[] { -1.5, 3, 2 } })
        {
            var found = LeastSquares.Run(TwoValleys, [.. starts.Select(start => At(start))]);
            Assert.True(found.IsConverged);
            Assert.Equal(1, found.Coordinates[0], 1e-6);
        }
    }

    [Fact]
    public void Once_two_starts_agree_the_rest_is_left_out()
    {
        var found = LeastSquares.Run(TwoValleys, [At(2), At(1.5), At(0.9), At(-2)]);
        Assert.Equal((2, 2), (found.StartsTried, found.StartsThere));

        // Agreement at the shallower valley stops the search as well: the rule is a rule, not a proof. Three that must agree see the deeper one.
        var starts = new[] { At(-2), At(-1.5), At(2) };
        Assert.Equal(2, LeastSquares.Run(TwoValleys, starts).StartsTried);
        Assert.Equal(1, LeastSquares.Run(TwoValleys, starts, new() { AgreeingStarts = 3 }).Coordinates[0], 1e-6);
    }

    [Fact]
    public void A_sum_or_a_difference_alone_cannot_be_told_apart_and_a_prior_mends_it()
    {
        // y = a + b observed twice: a and b are not identifiable. A unit prior on each makes both (1/3 of 2 · 1.5 = 1): a = b, (a + b − 1.5)·2 + a = 0, so a = 0.6.
        var without = LeastSquares.Run(new SumOfSquares(2, 2, u => [u[0] + u[1] - 1.4, u[0] + u[1] - 1.6]), [At(3, -1)]);
        Assert.Equal(LeastSquaresStatus.NotIdentifiable, without.Status);
        Assert.Throws<InvalidOperationException>(without.Covariance);

        var with = LeastSquares.Run(new SumOfSquares(2, 4, u => [u[0] + u[1] - 1.4, u[0] + u[1] - 1.6, u[0], u[1]]), [At(3, -1)]);
        Assert.True(with.IsConverged);
        Assert.Equal(0.6, with.Coordinates[0], 1e-6);
        Assert.Equal(0.6, with.Coordinates[1], 1e-6);

        // Information [[3, 2], [2, 3]]: its inverse has 3/5 on the diagonal and −2/5 beside it.
        Assert.Equal(0.6, with.Covariance()[0, 0], 1e-12);
        Assert.Equal(-0.4, with.Covariance()[0, 1], 1e-12);
    }

    [Fact]
    public void A_search_that_is_cut_short_says_so()
    {
        var found = LeastSquares.Run(Banana(), [At(-1.2, 1)], new() { MaximumIterations = 2 });
        Assert.Equal(LeastSquaresStatus.IterationLimit, found.Status);
        Assert.True(found.Distance > 1e-3);
    }

    [Fact]
    public void A_problem_that_is_defined_nowhere_says_so_and_one_bad_start_does_no_harm()
    {
        var nowhere = LeastSquares.Run(new SumOfSquares(1, 1, _ => null), [At(0), At(1)]);
        Assert.Equal(LeastSquaresStatus.Undefined, nowhere.Status);

        // ln x − 1, defined for positive x alone; the full step from 20 goes to 20 (1 − (3 − 1)) = −20, beyond the wall.
        var wall = new SumOfSquares(1, 1, u => u[0].Value > 0 ? [Slopes.Log(u[0]) - 1] : null);
        var found = LeastSquares.Run(wall, [At(-1), At(20)]);
        Assert.True(found.IsConverged);
        Assert.Contains(wall.Tried, point => point[0] < -1);
        Assert.Equal(Math.E, found.Coordinates[0], 1e-5);
    }

    [Fact]
    public void The_answer_is_the_best_point_tried_and_no_point_is_tried_twice_in_a_row()
    {
        // MathNet hands out the last point it tried, even one that it refused, and evaluates it once more.
        var problem = Banana();
        var found = LeastSquares.Run(problem, [At(-1.2, 1)]);
        Assert.Equal(problem.Tried.Count, found.Evaluations);
        Assert.Equal(problem.Tried.Count, problem.Tried.Select(point => (point[0], point[1])).Distinct().Count());
        Assert.Equal(problem.Tried.Min(SumAt), found.Deviance, 1e-15);
        Assert.Equal(1, found.Coordinates[0], 1e-6);

        static double SumAt(double[] point) => 100 * Math.Pow(point[1] - point[0] * point[0], 2) + Math.Pow(1 - point[0], 2);
    }

    [Fact]
    public void A_run_is_stopped_before_its_next_evaluation()
    {
        using var source = new CancellationTokenSource();
        var evaluations = 0;
        var problem = new SumOfSquares(2, 2, u =>
        {
            if (++evaluations == 3)
            {
                source.Cancel();
            }

            return [10 * (u[1] - u[0] * u[0]), 1 - u[0]];
        });
        Assert.Throws<OperationCanceledException>(() => LeastSquares.Run(problem, [At(-1.2, 1)], null, new() { Cancellation = source.Token }));
        Assert.Equal(3, evaluations);
    }

    [Fact]
    public void A_coarse_problem_brings_a_search_near_and_the_exact_one_alone_decides_where_it_ends()
    {
        // Its optimum is a hundredth away. The exact residuals are asked for only near their own root, x = 1, and the answer is theirs.
        var coarse = new SumOfSquares(1, 1, u => u[0].Value > 0 ? [Slopes.Log(u[0]) - 0.01] : null);
        var exact = new SumOfSquares(1, 1, u => u[0].Value > 0 ? [Slopes.Log(u[0])] : null) { Coarse = coarse };
        var found = LeastSquares.Run(exact, [At(2.5), At(1.5)]);
        Assert.True(found.IsConverged);
        Assert.Equal(1, found.Coordinates[0], 1e-6);
        Assert.All(exact.Tried, point => Assert.InRange(point[0], 0.7, 1.3));
        Assert.Equal(coarse.Tried.Count + exact.Tried.Count, found.Evaluations);

        // The second start is known to have reached the same optimum before the exact problem is asked again.
        Assert.Equal((2, 2), (found.StartsTried, found.StartsThere));
        var tried = exact.Tried.Count;
        LeastSquares.Run(exact, [At(2.5)]);
        Assert.Equal(2 * tried, exact.Tried.Count);
    }

    [Fact]
    public void A_coarse_problem_that_misleads_or_is_defined_nowhere_does_no_harm()
    {
        // The coarse valley lies where the exact problem is not defined; or there is no coarse valley at all.
        foreach (var coarse in new[] { new SumOfSquares(1, 1, u => [u[0] + 3]), new SumOfSquares(1, 1, _ => null) })
        {
            var found = LeastSquares.Run(new SumOfSquares(1, 1, u => u[0].Value > 0 ? [Slopes.Log(u[0]) - 1] : null) { Coarse = coarse }, [At(2)]);
            Assert.True(found.IsConverged);
            Assert.Equal(Math.E, found.Coordinates[0], 1e-5);
        }
    }

    [Fact]
    public void Dwells_integrated_coarsely_on_the_way_leave_the_optimum_and_its_covariance_where_they_are()
    {
        // Against a search on the exact problem alone. Both stop within 1e-6 standard errors of the optimum of their last linearization: with the rate at which the search
        // closes in, a tenth, within 2e-6 of each other.
        var fit = MembraneFit.Run(InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface) with { GlucosePermeabilityScale = 2 }, DialysisSolution.Glucose386));
        var alone = LeastSquares.Run(new Exactly(new(fit.Problem, MembraneFitOptions.Default.Integration)), [At(new double[fit.Problem.Dimension])]);
        Assert.Equal(0, (fit.Optimum.Slopes * (fit.Optimum.Coordinates - alone.Coordinates)).L2Norm(), 2e-6);
        Assert.Equal(0, (fit.Optimum.Covariance() - alone.Covariance()).InfinityNorm(), 1e-5);
        Assert.Equal(fit.Optimum.Status, alone.Status);
    }

    [Fact]
    public void A_membrane_is_fitted_with_at_most_eight_evaluations_for_a_start()
    {
        // One exchange, so one dwell is one evaluation; two starts that agree are enough. As it comes the minimizer takes six evaluations for a start, for each of five.
        foreach (var solution in new[] { DialysisSolution.Glucose227, DialysisSolution.Glucose386 })
        {
            var fast = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface) with { GlucosePermeabilityScale = 2 };
            Assert.InRange(MembraneFit.Run(InventedTests.Of(fast, solution)).Evaluations, 4, 16);
        }
    }

    private sealed class Exactly(FitProblem problem) : ILeastSquaresProblem
    {
        public int ParameterCount => problem.ParameterCount;

        public int RowCount => problem.RowCount;

        public ILeastSquaresProblem? Coarse => null;

        public bool Evaluate(Vector<double> coordinates, Vector<double> residuals, Matrix<double> slopes) => problem.Evaluate(coordinates, residuals, slopes);
    }

    private static SumOfSquares Banana() => new(2, 2, u => [10 * (u[1] - u[0] * u[0]), 1 - u[0]]);

    private static Vector<double> At(params double[] coordinates) => Vector<double>.Build.DenseOfArray(coordinates);
}
