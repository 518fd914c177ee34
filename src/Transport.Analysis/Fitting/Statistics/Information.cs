using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>The information JᵀJ of slopes J, worked with through J itself.</summary>
internal static class Information
{
    /// <summary>Whether some combination of coordinates changes no residual, whatever the coordinates' units.</summary>
    /// <remarks>
    /// Judged on columns of unit length. The limit, 1e-10 of the largest singular value, lies between the rounding of slopes (1e-15) and the worst
    /// problem that is still solved to ten digits (3e-7, a certified regression).
    /// </remarks>
    public static bool IsSingular(Matrix<double> slopes)
    {
        var lengths = slopes.ColumnNorms(2);
        if (lengths.Exists(length => !(length > 0)))
        {
            return true;
        }

        var scaled = slopes.Clone();
        scaled.MapIndexedInplace((_, j, slope) => slope / lengths[j]);
        var values = scaled.Svd(computeVectors: false).S;
        return slopes.RowCount < slopes.ColumnCount || values[^1] <= 1e-10 * values[0];
    }

    /// <summary>R⁻¹ of J = QR, so that the covariance is R⁻¹R⁻ᵀ.</summary>
    /// <remarks>By Gram and Schmidt's modified process: its R is as good as Householder's, and MathNet keeps it in one thread.</remarks>
    public static Matrix<double> InverseFactor(Matrix<double> slopes) => slopes.GramSchmidt().R.Inverse();
}
