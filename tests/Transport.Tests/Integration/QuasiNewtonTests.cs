namespace Transport.Tests.Integration;

/// <summary>Broyden's method on systems whose roots are known.</summary>
public sealed class QuasiNewtonTests
{
    [Fact]
    public void With_the_true_Jacobian_a_linear_system_takes_one_step()
    {
        // 2x + y = 5, x − 3y = −8 has x = 1, y = 3; the second column needs a pivot in the third case.
        foreach (var (a, b) in new[] { (new[,] { { 2.0, 1 }, { 1, -3 } }, new[] { 5.0, -8 }), (new[,] { { 0.0, 1 }, { 1, 0 } }, new[] { 3.0, 1 }) })
        {
            var newton = new QuasiNewton((double[,])a.Clone());
            var step = new double[2];
            newton.Step([-b[0], -b[1]], step);
            Assert.Equal(1, step[0], 1e-14);
            Assert.Equal(3, step[1], 1e-14);
        }
    }

    [Fact]
    public void From_a_rough_Jacobian_it_learns_the_way_to_the_root()
    {
        // x² + y = 3, x + y³ = 9 has x = 1, y = 2. With the diagonal alone, plain iteration needs 40 steps or fails; Broyden's method, which
        // converges faster than linearly, comes to 1e-12 in fewer than 15.
        static double[] F(double[] y) => [y[0] * y[0] + y[1] - 3, y[0] + y[1] * y[1] * y[1] - 9];
        double[] at = [1.3, 1.8];
        var newton = new QuasiNewton(new[,] { { 2.6, 0 }, { 0, 9.7 } });
        var miss = F(at);
        var rounds = 0;
        for (; rounds < 15 && miss.Max(value => Math.Abs(value)) > 1e-12; rounds++)
        {
            var step = new double[2];
            newton.Step(miss, step);
            at = [at[0] + step[0], at[1] + step[1]];
            var after = F(at);
            newton.Learn(step, [after[0] - miss[0], after[1] - miss[1]]);
            miss = after;
        }

        Assert.InRange(rounds, 3, 14);
        Assert.Equal(1, at[0], 1e-12);
        Assert.Equal(2, at[1], 1e-12);
    }
}
