namespace Transport;

/// <summary>Broyden's first method for f(y) = 0, from a Jacobian that is nearly known.</summary>
/// <remarks>C. G. Broyden, Math Comp 1965;19:577 (memory), with the inverse updated by the formula of Sherman and Morrison.</remarks>
internal sealed class QuasiNewton
{
    private readonly int n;
    private readonly double[,] inverse;

    /// <param name="jacobian">A guess of ∂f/∂y; it is used up.</param>
    public QuasiNewton(double[,] jacobian)
    {
        n = jacobian.GetLength(0);
        inverse = Invert(jacobian, n);
    }

    /// <summary>Writes −J⁻¹ f.</summary>
    public void Step(ReadOnlySpan<double> f, Span<double> step)
    {
        for (var i = 0; i < n; i++)
        {
            step[i] = 0;
            for (var j = 0; j < n; j++)
            {
                step[i] -= inverse[i, j] * f[j];
            }
        }
    }

    /// <summary>Learns from a step and the change of f that it made: J⁻¹ += (s − J⁻¹ Δf) sᵀJ⁻¹ / (sᵀ J⁻¹ Δf).</summary>
    public void Learn(ReadOnlySpan<double> step, ReadOnlySpan<double> change)
    {
        var foreseen = new double[n];
        var row = new double[n];
        var scale = 0.0;
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                foreseen[i] += inverse[i, j] * change[j];
                row[j] += step[i] * inverse[i, j];
            }

            scale += step[i] * foreseen[i];
        }

        if (scale == 0)
        {
            return;
        }

        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j < n; j++)
            {
                inverse[i, j] += (step[i] - foreseen[i]) * row[j] / scale;
            }
        }
    }

    // Gauss and Jordan, with the largest of each column as pivot.
    private static double[,] Invert(double[,] a, int n)
    {
        var b = new double[n, n];
        for (var i = 0; i < n; i++)
        {
            b[i, i] = 1;
        }

        for (var column = 0; column < n; column++)
        {
            var pivot = Enumerable.Range(column, n - column).MaxBy(row => Math.Abs(a[row, column]));
            for (var j = 0; j < n; j++)
            {
                (a[column, j], a[pivot, j]) = (a[pivot, j], a[column, j]);
                (b[column, j], b[pivot, j]) = (b[pivot, j], b[column, j]);
            }

            var over = 1 / a[column, column];
            for (var j = 0; j < n; j++)
            {
                a[column, j] *= over;
                b[column, j] *= over;
            }

            for (var row = 0; row < n; row++)
            {
                if (row != column && a[row, column] is var factor and not 0)
                {
                    for (var j = 0; j < n; j++)
                    {
                        a[row, j] -= factor * a[column, j];
                        b[row, j] -= factor * b[column, j];
                    }
                }
            }
        }

        return b;
    }
}
