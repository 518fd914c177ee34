using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Random;

namespace Transport.Tests.Comparison;

/// <summary>One observation given those that share its errors, Gaussian and with heavy tails, against sums over a fine grid and closed forms.</summary>
public sealed class JointErrorsTests
{
    // Three samples that share half of their variance, one of them with an error of its own three times as large.
    private static readonly Matrix<double> Covariance = Matrix<double>.Build.DenseOfArray(new[,] { { 2.0, 1, 1 }, { 1, 2, 1 }, { 1, 1, 10 } });
    private static readonly double[,] Whitening = Covariance.Cholesky().Factor.Inverse().ToArray();

    [Fact]
    public void Alone_an_observation_has_the_density_of_Students_t()
    {
        // ln p and P(below) of a t with 4 degrees of freedom and standard deviation 2, from the library's closed forms. Twenty nodes to each side: 1e-6.
        const double deviation = 2;
        var errors = new JointErrors(new[,] { { 1 / deviation } }, 4);
        var scale = deviation * Math.Sqrt(2.0 / 4);
        foreach (var residual in new[] { 0.0, 0.3, -1.7, 9 })
        {
            // A residual is predicted less observed: the observed lies as far below the middle as the residual is positive.
            var found = errors.Given([residual / deviation], 0, 0.5);
            Assert.Equal(StudentT.PDFLn(0, scale, 4, residual), found.LogDensity, 1e-6);
            Assert.Equal(StudentT.CDF(0, scale, 4, -residual), found.Below, 1e-6);
            Assert.Equal(-found.LogDensity, found.LogWeight, 1e-12);
            Assert.Equal(residual, found.Shift, 0.3); // measured again in the middle: half the step of the quadrature there
        }
    }

    [Fact]
    public void Given_others_it_is_the_product_of_the_factors_over_its_integral_also_where_that_has_two_peaks()
    {
        // The definition, summed over 400,000 steps of 0.001 to both sides. The second point has a sample so far off that the density has two peaks. 1e-5: what the grid leaves out
        // beyond 200 standard deviations.
        var errors = new JointErrors(Whitening, 4);
        foreach (var residuals in new[] { new[] { 0.3, -0.5, 2 }, [0.5, 14, -3] })
        {
            var whitened = (Matrix<double>.Build.DenseOfArray(Whitening) * Vector<double>.Build.DenseOfArray(residuals)).ToArray();
            for (var i = 0; i < 3; i++)
            {
                const double step = 0.001;
                var (total, below) = (0.0, 0.0);
                for (var n = -200_000; n < 200_000; n++)
                {
                    var shift = (n + 0.5) * step;
                    var mass = step * Math.Exp(LogT(whitened, i, shift));
                    total += mass;
                    below += shift > 0 ? mass : 0;
                }

                var found = errors.Given(whitened, i, 0.5);
                Assert.Equal(LogT(whitened, i, 0) - Math.Log(total), found.LogDensity, 1e-5);
                Assert.Equal(below / total, found.Below, 1e-5);
            }
        }

        static double LogT(double[] whitened, int i, double shift) =>
            Enumerable.Range(i, 3 - i).Sum(k => StudentT.PDFLn(0, Math.Sqrt(0.5), 4, whitened[k] + Whitening[k, i] * shift));
    }

    [Fact]
    public void With_many_degrees_of_freedom_it_is_the_Gaussian_and_leaves_out_with_its_weights()
    {
        // A t with a million degrees of freedom is a Gaussian to 1e-5 at these residuals.
        double[] whitened = [0.4, -1.2, 2.1];
        var (gaussian, student) = (new JointErrors(Whitening, null), new JointErrors(Whitening, 1e6));
        Assert.Equal(gaussian.LogHeight, student.LogHeight, 1e-5);
        for (var i = 0; i < 3; i++)
        {
            var (expected, found) = (gaussian.Given(whitened, i, 0.5), student.Given(whitened, i, 0.5));
            Assert.Equal(expected.LogDensity, found.LogDensity, 1e-4);
            Assert.Equal(expected.Below, found.Below, 1e-4);
            Assert.Equal(expected.LogWeight, found.LogWeight, 1e-4);
        }
    }

    [Fact]
    public void Errors_drawn_together_have_the_covariance_they_were_given()
    {
        // 40,000 draws. Of the Gaussian four standard errors of a variance, √(2/n) of it: 3 %. Of the t with 8 degrees of freedom the fourth moment is 4.5 instead of 3: 4 %.
        foreach (var degrees in new double?[] { null, 8 })
        {
            var errors = new JointErrors(Whitening, degrees);
            var random = new MersenneTwister(5);
            var draws = Enumerable.Range(0, 40_000).Select(_ => errors.Draw(random)).ToArray();
            for (var i = 0; i < 3; i++)
            {
                for (var j = 0; j <= i; j++)
                {
                    Assert.Equal(Covariance[i, j], draws.Average(draw => draw[i] * draw[j]), 0.04 * Math.Sqrt(Covariance[i, i] * Covariance[j, j]));
                }
            }
        }
    }
}
