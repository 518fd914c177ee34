using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace Transport.Analysis;

/// <summary>A multivariate Student t around a center: x = center + factor z, with z spherical.</summary>
internal sealed class StudentProposal(Vector<double> center, Matrix<double> covariance, double degreesOfFreedom)
{
    private readonly double[] center = center.ToArray();
    private readonly Matrix<double> factor = covariance.Cholesky().Factor;

    public int Dimension => center.Length;

    /// <summary>Draws z: a Gaussian of a random scale.</summary>
    public void Draw(Random random, Span<double> z)
    {
        var scale = Math.Sqrt(degreesOfFreedom / (2 * Gamma.Sample(random, degreesOfFreedom / 2, 1)));
        for (var j = 0; j < z.Length; j++)
        {
            z[j] = scale * Normal.Sample(random, 0, 1);
        }
    }

    /// <summary>Logarithm of the density at z, up to a constant.</summary>
    public double LogDensity(ReadOnlySpan<double> z)
    {
        var square = 0.0;
        foreach (var component in z)
        {
            square += component * component;
        }

        return -0.5 * (degreesOfFreedom + z.Length) * Math.Log(1 + square / degreesOfFreedom);
    }

    public void ToPoint(ReadOnlySpan<double> z, Span<double> x)
    {
        for (var j = 0; j < x.Length; j++)
        {
            x[j] = center[j];
            for (var k = 0; k <= j; k++)
            {
                x[j] += factor[j, k] * z[k];
            }
        }
    }

    public void FromPoint(ReadOnlySpan<double> x, Span<double> z)
    {
        for (var j = 0; j < x.Length; j++)
        {
            z[j] = x[j] - center[j];
            for (var k = 0; k < j; k++)
            {
                z[j] -= factor[j, k] * z[k];
            }

            z[j] /= factor[j, j];
        }
    }
}
