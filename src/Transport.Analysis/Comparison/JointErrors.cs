using MathNet.Numerics;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Double;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>The errors of observations that share some of them: of one quantity in one exchange, or of all means of nights. One observation's, given the others'.</summary>
/// <remarks>
/// <para>
/// Whitened residuals w = W e (e predicted − observed, W the inverse of a Cholesky factor) are independent and standard: Gaussian, or Student's t of unit variance. With
/// Gaussian errors an observation given the others is Gaussian with residual gᵢ/(C⁻¹)ᵢᵢ and variance 1/(C⁻¹)ᵢᵢ, g = C⁻¹e (Bürkner, Gabry and Vehtari, Comput Stat
/// 2021;36:1243; formulas read in the documentation of the R package loo).
/// </para>
/// <para>
/// With t errors it has the density Π t(wₖ + Wₖᵢ δ) of a shift δ of its residual, k from i on, over its integral. That has a peak for each factor, so it is integrated
/// from each peak outwards in steps that grow with the distance. A fit without the observation whitens the others anew, and the weight is the ratio of those two densities: with
/// Gaussian errors it is 1/p(yᵢ | others), with t errors not quite.
/// </para>
/// </remarks>
internal sealed class JointErrors
{
    private static readonly GaussLegendreRule Rule = new(0, 1, 20);

    private readonly double[,] whitening;
    private readonly Matrix<double> factor;
    private readonly double? degrees;
    private readonly double heightOfOne;
    private readonly double widthOfOne;
    private readonly double reach;
    private readonly (Matrix<double> Whitening, double LogHeight)[] without = [];

    /// <param name="whitening">Lower triangular.</param>
    /// <param name="degrees">Of Student's t; null: Gaussian.</param>
    public JointErrors(double[,] whitening, double? degrees)
    {
        (this.whitening, this.degrees) = (whitening, degrees);
        factor = DenseMatrix.OfArray(whitening).Inverse();
        heightOfOne = degrees is { } freedom
            ? SpecialFunctions.GammaLn((freedom + 1) / 2) - SpecialFunctions.GammaLn(freedom / 2) - 0.5 * Math.Log(Math.PI * (freedom - 2))
            : -0.5 * Math.Log(2 * Math.PI);
        LogHeight = HeightOf(DenseMatrix.OfArray(whitening));
        if (degrees is { } tails)
        {
            // How wide a peak is, and how far from it the density is 1e-12 of its height, in steps of asinh.
            widthOfOne = Math.Min(1, Math.Sqrt(tails - 2));
            reach = Math.Asinh(Math.Sqrt((tails - 2) * (Math.Pow(10, 24 / (tails + 1)) - 1)) / widthOfOne);
        }

        if (degrees is not null && Count > 1)
        {
            var covariance = factor.TransposeAndMultiply(factor);
            without = [.. Enumerable.Range(0, Count).Select(i =>
            {
                var others = covariance.RemoveRow(i).RemoveColumn(i).Cholesky().Factor.Inverse();
                return (others, HeightOf(others));
            })];
        }
    }

    /// <summary>How many observations.</summary>
    public int Count => whitening.GetLength(0);

    /// <summary>Logarithm of the density of all of them where every residual is zero.</summary>
    public double LogHeight { get; }

    /// <summary>One observation, given the others.</summary>
    /// <param name="whitened">The whitened residuals of all.</param>
    /// <param name="i">Which.</param>
    /// <param name="place">Where in its distribution it is to be measured again, 0 to 1.</param>
    public DatumGiven Given(ReadOnlySpan<double> whitened, int i, double place)
    {
        if (degrees is not null)
        {
            return OfStudent(whitened, i, place);
        }

        var (precision, pull) = (0.0, 0.0);
        for (var k = i; k < Count; k++)
        {
            precision += whitening[k, i] * whitening[k, i];
            pull += whitening[k, i] * whitened[k];
        }

        var residual = pull / Math.Sqrt(precision);
        var density = 0.5 * Math.Log(precision / (2 * Math.PI)) - 0.5 * residual * residual;
        return new(density, -density, Normal.CDF(0, 1, -residual), (residual + Normal.InvCDF(0, 1, place)) / Math.Sqrt(precision));
    }

    /// <summary>Errors of all of them, drawn together.</summary>
    public Vector<double> Draw(RandomSource random) => factor * DenseVector.Create(Count, _ => degrees is { } freedom
        ? StudentT.Sample(random, 0, Math.Sqrt((freedom - 2) / freedom), freedom)
        : Normal.Sample(random, 0, 1));

    private double HeightOf(Matrix<double> whitening) => whitening.Diagonal().Sum(Math.Log) + whitening.RowCount * heightOfOne;

    // Of whitened residuals, less the height.
    private double LogShape(double residual) => -0.5 * (degrees!.Value + 1) * Math.Log(1 + residual * residual / (degrees.Value - 2));

    private DatumGiven OfStudent(ReadOnlySpan<double> whitened, int i, double place)
    {
        var (nodes, total, upward, highest) = (new List<(double Shift, double Sum)>(), 0.0, 0.0, double.NegativeInfinity);
        var (peaks, scale) = (new List<double>(), double.PositiveInfinity);
        for (var k = i; k < Count; k++)
        {
            if (whitening[k, i] != 0)
            {
                peaks.Add(-whitened[k] / whitening[k, i]);
                scale = Math.Min(scale, widthOfOne / Math.Abs(whitening[k, i]));
                highest = Math.Max(highest, LogProduct(whitened, i, peaks[^1]));
            }
        }

        peaks.Sort();
        for (var p = 0; p < peaks.Count; p++)
        {
            // A shift of zero parts what lies above the observed value from what lies below.
            double[] ends =
            [
                p == 0 ? -reach : Stretched((peaks[p - 1] - peaks[p]) / 2),
                .. new[] { 0.0, Stretched(-peaks[p]) }.Order(),
                p == peaks.Count - 1 ? reach : Stretched((peaks[p + 1] - peaks[p]) / 2),
            ];
            for (var part = 1; part < ends.Length; part++)
            {
                var (from, to) = (Math.Clamp(ends[part - 1], ends[0], ends[^1]), Math.Clamp(ends[part], ends[0], ends[^1]));
                for (var node = 0; node < Rule.Order && to > from; node++)
                {
                    var x = from + (to - from) * Rule.Abscissas[node];
                    var shift = peaks[p] + scale * Math.Sinh(x);
                    var mass = (to - from) * Rule.Weights[node] * scale * Math.Cosh(x) * Math.Exp(LogProduct(whitened, i, shift) - highest);
                    total += mass;
                    upward += shift >= 0 ? mass : 0;
                    nodes.Add((shift, total));
                }
            }
        }

        // Residuals are predicted − observed: what is measured again lower has a larger one.
        var drawn = -nodes.Find(node => node.Sum >= place * total).Shift;
        var density = LogProduct(whitened, i, 0) - highest - Math.Log(total);
        return new(density, Weight(whitened, i, density), upward / total, drawn);

        double Stretched(double distance) => Math.Asinh(distance / scale);
    }

    // ln of the product of the factors that a shift of one residual moves.
    private double LogProduct(ReadOnlySpan<double> whitened, int i, double shift)
    {
        var sum = 0.0;
        for (var k = i; k < Count; k++)
        {
            sum += LogShape(whitened[k] + whitening[k, i] * shift);
        }

        return sum;
    }

    private double Weight(ReadOnlySpan<double> whitened, int i, double density)
    {
        if (Count == 1)
        {
            return -density;
        }

        var all = LogHeight;
        foreach (var residual in whitened)
        {
            all += LogShape(residual);
        }

        var residuals = factor * DenseVector.OfArray(whitened.ToArray());
        var others = without[i].Whitening * DenseVector.OfEnumerable(residuals.Where((_, k) => k != i));
        return without[i].LogHeight + others.Sum(LogShape) - all;
    }
}
