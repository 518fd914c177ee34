using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>The information JᵀJ of slopes J, worked with through J itself.</summary>
internal static class Information
{
    private const double Limit = 1e-10;

    /// <summary>Whether some combination of coordinates changes no residual, whatever the coordinates' units.</summary>
    /// <remarks>
    /// Judged on columns of unit length. The limit, 1e-10 of the largest singular value, lies between the rounding of slopes (1e-15) and the worst
    /// problem that is still solved to ten digits (3e-7, a certified regression).
    /// </remarks>
    public static bool IsSingular(Matrix<double> slopes)
    {
        if (slopes.RowCount < slopes.ColumnCount)
        {
            return true;
        }

        var lengths = slopes.ColumnNorms(2);
        return lengths.Exists(length => !(length > 0)) || !IsPlainlyRegular(slopes, lengths) && SmallestSingularValue(slopes, lengths) <= Limit;
    }

    // 1/(‖J‖‖J⁺‖) in Frobenius' norm is at most the smallest singular value over the largest, at a fifth of the work.
    private static bool IsPlainlyRegular(Matrix<double> slopes, Vector<double> lengths)
    {
        try
        {
            var inverse = InverseFactor(slopes);
            var sum = 0.0;
            for (var j = 0; j < lengths.Count; j++)
            {
                sum += lengths[j] * lengths[j] * inverse.Row(j).DotProduct(inverse.Row(j));
            }

            return 1 / Math.Sqrt(lengths.Count * sum) > Limit;
        }
        catch (ArgumentException)
        {
            // A column is to the bit a combination of those before it.
            return false;
        }
    }

    // Over the largest.
    private static double SmallestSingularValue(Matrix<double> slopes, Vector<double> lengths)
    {
        var scaled = slopes.Clone();
        scaled.MapIndexedInplace((_, j, slope) => slope / lengths[j]);
        var values = scaled.Svd(computeVectors: false).S;
        return values[^1] / values[0];
    }

    /// <summary>R⁻¹ of J = QR, so that the covariance is R⁻¹R⁻ᵀ.</summary>
    /// <remarks>By Gram and Schmidt's modified process: its R is as good as Householder's, and MathNet keeps it in one thread.</remarks>
    public static Matrix<double> InverseFactor(Matrix<double> slopes) => slopes.GramSchmidt().R.Inverse();
}
