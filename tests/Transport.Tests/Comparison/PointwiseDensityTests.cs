using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;
using Transport.Tests.Fitting;

namespace Transport.Tests.Comparison;

/// <summary>Criteria over draws, against models whose criteria are known in closed form.</summary>
public sealed class PointwiseDensityTests
{
    [Fact]
    public void Of_a_mean_with_known_variance_waic_and_leaving_one_out_are_those_of_the_closed_form()
    {
        // y ~ N(θ, 1), θ ~ N(0, 100): the posterior is N(m, v), with v = 1/(n + 0.01). WAIC: ln N(y; m, 1 + v) less the variance of −(y − θ)²/2, which is
        // v²/2 + (y − m)² v. Left out: ln N(y; m₋, 1 + v₋), the posterior of the others. Textbook algebra. 40,000 independent draws: four Monte Carlo errors, taken as
        // the spread of the estimate over ten seeds, are 0.02 for the worst datum.
        double[] data = [-0.8, 0.3, 1.9, 0.4, -1.1, 0.9, 2.6];
        var random = new MersenneTwister(4);
        var (mean, variance) = Posterior(data);
        double[] draws = [.. Enumerable.Range(0, 40_000).Select(_ => Normal.Sample(random, mean, Math.Sqrt(variance)))];
        foreach (var datum in data)
        {
            double[] densities = [.. draws.Select(draw => Normal.PDFLn(draw, 1, datum))];
            var found = Of(densities);
            var atDraws = Normal.PDFLn(mean, Math.Sqrt(1 + variance), datum);
            var (others, spread) = Posterior([.. data.Where(other => other != datum)]);

            Assert.Equal(atDraws, found.AtDraws, 0.01);
            Assert.Equal(atDraws - (variance * variance / 2 + Math.Pow(datum - mean, 2) * variance), found.WidelyApplicable, 0.02);
            Assert.Equal(Normal.PDFLn(others, Math.Sqrt(1 + spread), datum), ParetoSmoothing.LogSum([.. densities.Zip(found.Weights.LogWeights, (density, weight) => density + weight)]), 0.02);
            Assert.True(found.IsReliable);
        }

        static (double Mean, double Variance) Posterior(double[] of) => (of.Sum() / (of.Length + 0.01), 1 / (of.Length + 0.01));
    }

    [Fact]
    public void The_tail_of_generalized_pareto_samples_is_found_and_a_heavy_one_is_not_believed()
    {
        // Ordered quantiles of a generalized Pareto distribution of scale 2 at 2000 even places: σ ((1 − p)^−k − 1)/k. The shape is drawn to 0.5 as by ten more
        // data, 0.2 % of the way. An even sample lacks its extreme tail, so 0.03, where the standard error of a random one is (1 + k)/√n = 0.03 to 0.04.
        foreach (var shape in new[] { -0.3, 0.2, 0.5, 0.9 })
        {
            double[] sample = [.. Enumerable.Range(0, 2000).Select(i => 2 * (Math.Pow(1 - (i + 0.5) / 2000, -shape) - 1) / shape)];
            var (found, scale) = ParetoSmoothing.Fit(sample);
            Assert.Equal(shape, found, 0.03);
            Assert.Equal(2, scale, 0.1);
        }

        // A datum ten standard deviations out, with the posterior as wide as its error: its weights have no mean that draws could find.
        var random = new MersenneTwister(4);
        Assert.False(Of([.. Enumerable.Range(0, 4000).Select(_ => Normal.PDFLn(Normal.Sample(random, 0, 1), 1, 10))]).IsReliable);
    }

    [Fact]
    public void The_limit_of_the_shape_and_weights_that_are_all_one()
    {
        // min(0.7, 1 − 1/log10 S): 0.565 for 200 draws and 0.7 beyond 2154 (read: documentation of two packages).
        Assert.Equal(0.565, ParetoSmoothing.LargestShape(200), 0.0005);
        Assert.Equal(0.7, ParetoSmoothing.LargestShape(2200));
        var flat = ParetoSmoothing.Of(new double[400]);
        Assert.Equal(double.NegativeInfinity, flat.Shape);
        Assert.All(flat.LogWeights, weight => Assert.Equal(-Math.Log(400), weight, 1e-12));
    }

    [Fact]
    public void Corrected_Akaike_by_hand_and_where_it_is_not_defined()
    {
        // ln L = −10, two parameters, ten data: 20 + 4 + 12/7.
        Assert.Equal(25.714286, ComparisonRun.CorrectedAkaike(-10, 2, 10)!.Value, 1e-6);
        Assert.Equal(2 * 10 + 2 * 8 + 2 * 8 * 9, ComparisonRun.CorrectedAkaike(-10, 8, 10)!.Value, 1e-12);
        Assert.Null(ComparisonRun.CorrectedAkaike(-10, 9, 10));
        Assert.Null(ComparisonRun.CorrectedAkaike(-10, 12, 10));
    }

    [Fact]
    public void A_sample_that_shares_an_error_is_judged_given_the_others()
    {
        // p(yᵢ | others) = p(all)/p(others), both densities of a multivariate Gaussian from its covariance and determinant. Rounding alone differs: 1e-9.
        var test = InventedTests.Of(ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface), DialysisSolution.Glucose227);
        var fit = MembraneFit.Run(test);
        var pointwise = new PointwiseDraws(fit.Estimation, new() { RelativeTolerance = 1e-8 });
        double[] point = [0.4, -0.3, 0.2, 0.5, -0.1, 0.3, -0.6, 0.7];
        Assert.Equal(fit.Estimation.Dimension, point.Length);
        var (predicted, given) = pointwise.Run(1, (_, j) => point[j], 1, RunControl.None);
        var joint = 0.0;
        foreach (var group in Enumerable.Range(0, pointwise.Data.Count).GroupBy(i => pointwise.Data[i].Observation.Quantity))
        {
            int[] all = [.. group];
            joint += LogDensity(all);
            foreach (var i in all)
            {
                Assert.Equal(LogDensity(all) - LogDensity([.. all.Where(other => other != i)]), given[i][0].LogDensity, 1e-9);
            }
        }

        var whitened = Vector<double>.Build.Dense(fit.Optimum.Residuals.Count);
        var slopes = Matrix<double>.Build.Dense(whitened.Count, point.Length);
        Assert.True(new FitProblem(fit.Estimation, new() { RelativeTolerance = 1e-8 }).Evaluate(Vector<double>.Build.DenseOfArray(point), whitened, slopes));
        Assert.Equal(joint, pointwise.LogHeight - 0.5 * whitened.Take(pointwise.Data.Count).Sum(residual => residual * residual), 1e-5);

        double LogDensity(int[] rows)
        {
            if (rows.Length == 0)
            {
                return 0;
            }

            Observation[] data = [.. rows.Select(row => pointwise.Data[row].Observation)];
            var residuals = Vector<double>.Build.Dense(rows.Length, k => data[k].Quantity == ObservedQuantity.NetUltrafiltrationMilliliters
                ? predicted[rows[k]][0] - data[k].Value
                : data[k].Value * Math.Log(predicted[rows[k]][0] / data[k].Value));
            var covariance = Matrix<double>.Build.Dense(rows.Length, rows.Length, (k, l) =>
                data[k].SharedDeviation * data[l].SharedDeviation + (k == l ? data[k].OwnDeviation * data[k].OwnDeviation : 0));
            return -0.5 * (residuals * covariance.Inverse() * residuals + Math.Log(covariance.Determinant()) + rows.Length * Math.Log(2 * Math.PI));
        }
    }

    // Left out by weights 1/p.
    private static PointwiseDensity Of(double[] logDensities) => PointwiseDensity.Of(logDensities, Array.ConvertAll(logDensities, density => -density));
}
