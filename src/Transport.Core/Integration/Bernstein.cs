namespace Transport;

/// <summary>
/// A polynomial over one step, 0 to 1, by its Bernstein coefficients: the first and the last are its values at the ends, and it has no more roots
/// between them than its coefficients have changes of sign. So roots are found and none is missed, without a grid.
/// </summary>
/// <remarks>Descartes' rule of signs with subdivision by de Casteljau (Lane and Riesenfeld 1981, memory).</remarks>
internal static class Bernstein
{
    // Two roots closer than this share of a step are one.
    private const double Nearest = 1e-13;

    /// <summary>Of the dense output y0 + x(F1 + (1−x)(F2 + x(F3 + …))).</summary>
    /// <param name="start">y0.</param>
    /// <param name="terms">F1 to F7.</param>
    public static double[] Of(double start, ReadOnlySpan<double> terms)
    {
        double[] sum = [terms[^1]];
        for (var term = terms.Length - 1; term >= 0; term--)
        {
            // By x or by 1 − x in turn: one degree more.
            var degree = sum.Length;
            var next = new double[degree + 1];
            for (var i = 0; i < degree; i++)
            {
                var share = (term & 1) == 0 ? i + 1 : degree - i;
                next[(term & 1) == 0 ? i + 1 : i] = share * sum[i] / degree;
            }

            var constant = term == 0 ? start : terms[term - 1];
            sum = [.. next.Select(coefficient => coefficient + constant)];
        }

        return sum;
    }

    /// <summary>The derivative by x.</summary>
    public static double[] Derivative(double[] polynomial) =>
        [.. Enumerable.Range(0, polynomial.Length - 1).Select(i => (polynomial.Length - 1) * (polynomial[i + 1] - polynomial[i]))];

    /// <summary>The product.</summary>
    public static double[] Product(double[] left, double[] right)
    {
        var (m, n) = (left.Length - 1, right.Length - 1);
        var product = new double[m + n + 1];
        for (var i = 0; i <= m; i++)
        {
            for (var j = 0; j <= n; j++)
            {
                product[i + j] += Choose(m, i) * Choose(n, j) / Choose(m + n, i + j) * left[i] * right[j];
            }
        }

        return product;
    }

    /// <summary>The roots within the step at which the sign changes, in order.</summary>
    public static List<double> Roots(double[] polynomial)
    {
        var roots = new List<double>();
        Collect(polynomial, 0, 1, roots);
        return roots;
    }

    // Halves the step until each piece has one change of sign or none; then goes on to the last digit.
    private static void Collect(double[] polynomial, double low, double high, List<double> roots)
    {
        var changes = Changes(polynomial);
        if (changes == 0)
        {
            return;
        }

        if (high - low < Nearest)
        {
            if ((changes & 1) == 1)
            {
                roots.Add(0.5 * (low + high));
            }

            return;
        }

        var (left, right) = Halves(polynomial);
        var middle = 0.5 * (low + high);
        Collect(left, low, middle, roots);
        if (left[^1] == 0 && Sign(left, fromEnd: true) * Sign(right, fromEnd: false) < 0)
        {
            roots.Add(middle);
        }

        Collect(right, middle, high, roots);
    }

    /// <summary>The sign just inside an end: −1, 0 or 1; 0 of nothing but zeros.</summary>
    public static int Sign(double[] polynomial, bool fromEnd)
    {
        for (var i = 0; i < polynomial.Length; i++)
        {
            if (Math.Sign(polynomial[fromEnd ? polynomial.Length - 1 - i : i]) is var sign and not 0)
            {
                return sign;
            }
        }

        return 0;
    }

    private static int Changes(double[] polynomial)
    {
        int last = 0, changes = 0;
        foreach (var coefficient in polynomial)
        {
            var sign = Math.Sign(coefficient);
            changes += sign * last < 0 ? 1 : 0;
            last = sign == 0 ? last : sign;
        }

        return changes;
    }

    private static (double[] Left, double[] Right) Halves(double[] polynomial)
    {
        var right = (double[])polynomial.Clone();
        var left = new double[polynomial.Length];
        for (var level = 0; level < polynomial.Length; level++)
        {
            left[level] = right[0];
            for (var i = 0; i < polynomial.Length - 1 - level; i++)
            {
                right[i] = 0.5 * (right[i] + right[i + 1]);
            }
        }

        return (left, right);
    }

    private static double Choose(int n, int k)
    {
        var ways = 1.0;
        for (var i = 1; i <= k; i++)
        {
            ways = ways * (n - k + i) / i;
        }

        return ways;
    }
}
