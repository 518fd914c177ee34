namespace Transport.Tests.Fitting.Statistics;

public sealed class ChainDiagnosticsTests
{
    // Four chains of 250 draws made from u, a stream of Park and Miller's generator (s ← 16807 s mod 2³¹ − 1, seed 20261125, draw s / (2³¹ − 1)), filled chain by chain.
    // Expected: rhat, ess_bulk, ess_tail, mean and mcse_mean of version 1.4.0 of the R package posterior, by the authors of the definitions, run once on the same
    // draws; twelve digits were printed, so the tolerance is their rounding.
    [Theory]
    [InlineData("uniform", 1.00295419613, 1044.82942901, 990.93456788, 0.514261186369, 0.00868038905373)]
    [InlineData("moving", 1.08647849459, 52.0155408714, 103.008168398, 4.96400478222, 0.115841806967)]
    [InlineData("shifted", 1.26016481381, 12.1400192506, 34.7463424694, 0.639261186369, 0.102053702347)]
    [InlineData("scaled", 1.19492204584, 1037.09952233, 34.7463424694, 0.51263934037, 0.0178107982436)]
    [InlineData("drifting", 1.30131321895, 10.4484369354, 113.773038927, 1.01626118637, 0.125956878725)]
    [InlineData("heavy", 1.00311097513, 1044.82942901, 990.93456788, -36.5008848741, 2250.34596649)]
    [InlineData("alternating", 1.00679307231, 3000, 1009.14382555, 0.343040551971, 0.00593373308429)]
    [InlineData("odd", 1.00282618875, 1037.77089669, 983.924833665, 0.514676415469, 0.00870276459703)]
    public void The_numbers_are_those_of_the_authors_own_program(string kind, double ratio, double bulk, double tail, double mean, double error)
    {
        var found = ChainDiagnostics.Of(Made(kind));
        Assert.Equal(1, found.RHat / ratio, 1e-9);
        Assert.Equal(1, found.BulkEffectiveDraws / bulk, 1e-9);
        Assert.Equal(1, found.TailEffectiveDraws / tail, 1e-9);
        Assert.Equal(1, found.Mean / mean, 1e-9);
        Assert.Equal(1, found.MeanError / error, 1e-9);
    }

    [Fact]
    public void Good_chains_pass_and_every_bad_kind_is_flagged()
    {
        Assert.True(ChainDiagnostics.Of(Made("uniform")).IsConverged);
        Assert.True(ChainDiagnostics.Of(Made("heavy")).IsConverged);
        foreach (var bad in new[] { "moving", "shifted", "scaled", "drifting", "stuck", "one stuck" })
        {
            Assert.False(ChainDiagnostics.Of(Made(bad)).IsConverged, bad);
        }

        // Chains that agree in location and differ in scale are seen by the folded ranks alone.
        Assert.True(ChainDiagnostics.Of(Made("scaled")).BulkEffectiveDraws > 400);
        Assert.Equal(double.PositiveInfinity, ChainDiagnostics.Of(Made("stuck")).RHat);
        Assert.Equal(0, ChainDiagnostics.Of(Made("stuck")).BulkEffectiveDraws);
    }

    [Fact]
    public void A_moving_average_of_first_order_is_worth_what_theory_says()
    {
        // x ← 0.7 x + noise: the integrated autocorrelation is (1 + 0.7) / (1 − 0.7) = 5.667. Four chains of 20,000; the estimate's own scatter is some 3 %,
        // three of them are allowed.
        var random = new Random(1);
        var chains = Enumerable.Range(0, 4).Select(_ =>
        {
            var x = 0.0;
            return Enumerable.Range(0, 20_000).Select(_ => x = 0.7 * x + MathNet.Numerics.Distributions.Normal.Sample(random, 0, 1)).ToArray();
        }).ToList();
        Assert.Equal(80_000 / 5.667, ChainDiagnostics.Of(chains).BulkEffectiveDraws, 0.09 * 80_000 / 5.667);
    }

    [Fact]
    public void Chains_that_cannot_be_judged_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ChainDiagnostics.Of([]));
        Assert.Throws<ArgumentException>(() => ChainDiagnostics.Of([new double[10], new double[11]]));
        Assert.Throws<ArgumentException>(() => ChainDiagnostics.Of([new double[4]]));
        Assert.Throws<ArgumentException>(() => ChainDiagnostics.Of([[.. new double[10], double.NaN]]));
    }

    private static double[][] Made(string kind)
    {
        var state = 20261125L;
        var chains = Enumerable.Range(0, 4).Select(_ => Enumerable.Range(0, 250).Select(_ =>
        {
            state = 16807 * state % 2147483647;
            return state / 2147483647.0;
        }).ToArray()).ToArray();
        switch (kind)
        {
            case "moving" or "alternating":
                foreach (var chain in chains)
                {
                    for (var i = 1; i < chain.Length; i++)
                    {
                        chain[i] += (kind == "moving" ? 0.9 : -0.5) * chain[i - 1];
                    }
                }

                return chains;
            case "shifted":
                return [.. chains[..3], Array.ConvertAll(chains[3], u => u + 0.5)];
            case "scaled":
                return [.. chains[..3], Array.ConvertAll(chains[3], u => (u - 0.5) * 4 + 0.5)];
            case "drifting":
                return [.. chains.Select(chain => chain.Select((u, i) => u + (i + 1) / 250.0).ToArray())];
            case "heavy":
                return [.. chains.Select(chain => Array.ConvertAll(chain, u => (u - 0.5) / Math.Pow(1.000001 - Math.Abs(2 * u - 1), 2)))];
            case "odd":
                return [.. chains.Select(chain => chain[..249])];
            case "stuck":
                return [.. chains.Select(chain => Array.ConvertAll(chain, _ => 0.5))];
            case "one stuck":
                return [.. chains[..3], Array.ConvertAll(chains[3], _ => 0.5)];
            default:
                return chains;
        }
    }
}
