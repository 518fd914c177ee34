namespace Transport.Tests.Integration;

/// <summary>The order of the integrator and of its dense output, observed with steps of a forced length.</summary>
/// <remarks>
/// A problem whose absolute scale is enormous accepts every step, so one call of Run over h, with h well below the length of a first
/// step, is one step of length h. The tests check that it was.
/// </remarks>
public sealed class OrderTests
{
    private static readonly IntegrationOptions Loose = new() { RelativeTolerance = 1e-3 };

    [Fact]
    public void The_error_falls_with_the_eighth_power_of_the_step()
    {
        // B4 of Hull et al. 1972 (closed solution) over 8 min with 28, 40 and 56 steps. The order is 8 by construction; an
        // observed one between 7.5 and 8.5 leaves room for the next term, and excludes 7. Errors stay above 1e-14, so rounding is out.
        var errors = new[] { 28, 40, 56 }.Select(steps => ErrorAtEnd(8, steps)).ToArray();
        Assert.All(errors, error => Assert.True(error > 1e-14));
        Assert.InRange(Math.Log(errors[0] / errors[1]) / Math.Log(40.0 / 28.0), 7.5, 8.5);
        Assert.InRange(Math.Log(errors[1] / errors[2]) / Math.Log(56.0 / 40.0), 7.5, 8.5);
        Assert.InRange(Math.Log2(errors[0] / errors[2]), 7.5, 8.5);
    }

    [Fact]
    public void The_dense_output_has_order_seven()
    {
        // One step from t = 0.4; the largest error of the polynomial at nine inner points falls as h⁸ when its order is 7.
        // At least 6 (h⁷) is what interpolation must not spoil; the observed exponent is 8 within a half.
        var errors = new[] { 0.4, 0.2, 0.1 }.Select(DenseError).ToArray();
        Assert.All(errors, error => Assert.True(error > 1e-15));
        Assert.InRange(Math.Log2(errors[0] / errors[1]), 7.5, 8.8);
        Assert.InRange(Math.Log2(errors[1] / errors[2]), 7.5, 8.8);
    }

    [Fact]
    public void The_dense_output_meets_both_ends_of_its_step()
    {
        // By construction, to rounding.
        var observer = new Ends();
        var integrator = new DormandPrince853<Real, Problem>(Problem.A3);
        integrator.Run(0, 20, Problem.A3.Start(), new() { RelativeTolerance = 1e-6 }, ref observer);
        Assert.True(observer.Steps > 5);
        Assert.InRange(observer.Largest, 0, 1e-14);
    }

    private static double ErrorAtEnd(double span, int steps)
    {
        var problem = Problem.B4 with { Scale = 1e30 };
        var integrator = new DormandPrince853<Real, Problem>(problem);
        var state = problem.Start();
        var count = new StepCount();
        for (var i = 0; i < steps; i++)
        {
            integrator.Run(i * span / steps, (i + 1) * span / steps, state, Loose, ref count);
        }

        Assert.Equal(steps, count.Steps);
        return problem.Solution!(span).Select((y, i) => Math.Abs(y - state[i].Value)).Max();
    }

    private static double DenseError(double length)
    {
        const double start = 0.4;
        var problem = Problem.A3 with { Scale = 1e30 };
        var integrator = new DormandPrince853<Real, Problem>(problem);
        var observer = new Inside(problem);
        integrator.Run(start, start + length, [.. problem.Solution!(start).Select(Real.Of)], Loose, ref observer);
        Assert.Equal(1, observer.Steps);
        return observer.Largest;
    }

    private struct Inside(Problem problem) : IStepObserver<Real>
    {
        public int Steps { get; private set; }

        public double Largest { get; private set; }

        public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

        public double Observe(ref DenseStep<Real> step)
        {
            Steps++;
            for (var i = 1; i < 10; i++)
            {
                var t = step.Start + 0.1 * i * step.Length;
                Largest = Math.Max(Largest, Math.Abs(step.Component(0, t).Value - problem.Solution!(t)[0]));
            }

            return double.NaN;
        }
    }

    private struct Ends : IStepObserver<Real>
    {
        public int Steps { get; private set; }

        public double Largest { get; private set; }

        public readonly double Wanted(double from, double reach) => double.PositiveInfinity;

        public double Observe(ref DenseStep<Real> step)
        {
            Steps++;
            Largest = Math.Max(Largest, Math.Abs(step.Component(0, step.Start).Value / step.StartState[0].Value - 1));
            Largest = Math.Max(Largest, Math.Abs(step.Component(0, step.End).Value / step.EndState[0].Value - 1));
            return double.NaN;
        }
    }
}
