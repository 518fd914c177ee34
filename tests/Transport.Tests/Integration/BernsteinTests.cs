namespace Transport.Tests.Integration;

/// <summary>Roots of polynomials whose roots are known.</summary>
public sealed class BernsteinTests
{
    [Theory]
    [InlineData(0.1, 0.5, 0.9)]
    [InlineData(0.3, 0.3001, 0.30011)]
    [InlineData(0.25, 0.5, 0.75)]
    [InlineData(1e-9, 0.5, 1 - 1e-9)]
    public void Every_root_is_found(double first, double second, double third)
    {
        // Three linear factors, some roots where the step is halved. How well a root can be known: 1e-16 of the coefficients over the slope there.
        var polynomial = Bernstein.Product(Bernstein.Product([-first, 1 - first], [-second, 1 - second]), [-third, 1 - third]);
        var found = Bernstein.Roots(polynomial);
        Assert.Equal(3, found.Count);
        double[] expected = [first, second, third];
        for (var i = 0; i < 3; i++)
        {
            var slope = expected.Where((_, k) => k != i).Aggregate(1.0, (product, root) => product * (expected[i] - root));
            Assert.Equal(expected[i], found[i], 1e-13 + 1e-15 / Math.Abs(slope));
        }
    }

    [Fact]
    public void Where_the_sign_does_not_change_there_is_no_root()
    {
        // Two roots at 0.3, one on each end, none at all.
        Assert.Empty(Bernstein.Roots(Bernstein.Product([-0.25, 0.75], [-0.25, 0.75])));
        Assert.Empty(Bernstein.Roots([0, 1]));
        Assert.Empty(Bernstein.Roots([1, 0]));
        Assert.Empty(Bernstein.Roots(Bernstein.Product([-2, -1], [3, 2])));
    }

    [Fact]
    public void The_dense_output_is_its_polynomial()
    {
        // y0 + x(F1 + (1−x)(F2 + x(F3 + …))) by its definition, at nine points; rounding.
        double[] terms = [1.5, -0.7, 0.31, 2.2, -1.1, 0.6, -0.45];
        var polynomial = Bernstein.Of(0.8, terms);
        for (var i = 0; i <= 8; i++)
        {
            var x = i / 8.0;
            var nested = terms.Reverse().Select((term, level) => (term, level)).Aggregate(
                0.0, (sum, next) => (next.level % 2 == 0 ? x : 1 - x) * (sum + next.term));
            Assert.Equal(0.8 + nested, Value(polynomial, x), 1e-14);
        }

        // Degree 7: the difference quotient over 1e-6 to 1e-8.
        Assert.Equal((Value(polynomial, 0.4 + 5e-7) - Value(polynomial, 0.4 - 5e-7)) / 1e-6, Value(Bernstein.Derivative(polynomial), 0.4), 1e-8);
    }

    // By the definition: Σ b_i C(n, i) x^i (1 − x)^(n − i).
    private static double Value(double[] polynomial, double x)
    {
        double sum = 0, ways = 1;
        var degree = polynomial.Length - 1;
        for (var i = 0; i <= degree; i++)
        {
            sum += polynomial[i] * ways * Math.Pow(x, i) * Math.Pow(1 - x, degree - i);
            ways = ways * (degree - i) / (i + 1);
        }

        return sum;
    }
}
