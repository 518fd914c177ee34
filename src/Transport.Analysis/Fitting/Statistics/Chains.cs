namespace Transport.Analysis;

/// <summary>Draws from a density, in four chains.</summary>
internal sealed class Chains
{
    // By coordinate, chain, draw.
    private readonly double[][][] draws;

    public Chains(int dimension, int count) => draws =
    [
        .. Enumerable.Range(0, dimension).Select(_ => Enumerable.Range(0, ILogDensity.Lanes).Select(_ => new double[count]).ToArray()),
    ];

    public int Dimension => draws.Length;

    /// <summary>Draws of one chain.</summary>
    public int Count => draws[0][0].Length;

    /// <summary>Share of the proposals after warm-up that were accepted.</summary>
    public double AcceptedShare { get; set; }

    /// <summary>Evaluations of four points each, warm-up included.</summary>
    public int Evaluations { get; set; }

    /// <summary>One coordinate's draws, chain by chain.</summary>
    public IReadOnlyList<double[]> this[int coordinate] => draws[coordinate];

    /// <summary>Whether the chains of each coordinate tell one story.</summary>
    public IReadOnlyList<ChainDiagnostics> Diagnostics() => [.. draws.Select(chains => ChainDiagnostics.Of(chains))];

    /// <summary>What to say where the chains do not tell one story; null where they do.</summary>
    /// <param name="diagnostics">Of each coordinate.</param>
    /// <param name="whose">" of …" where there are several posteriors.</param>
    /// <param name="otherwise">What else serves than more draws.</param>
    public static Finding? NotConverged(IReadOnlyList<ChainDiagnostics> diagnostics, string whose = "", string otherwise = "") => diagnostics.All(one => one.IsConverged)
        ? null
        : new(Severity.Warning, "posterior-not-converged", FormattableString.Invariant(
            $"The four chains{whose} do not tell one story yet: R-hat {diagnostics.Max(one => one.RHat):0.000}, {diagnostics.Min(one => Math.Min(one.BulkEffectiveDraws, one.TailEffectiveDraws)):0} effective draws; expected under 1.01 and at least 400. Draw more{otherwise}."));

    /// <summary>A coordinate of one of so many draws, taken evenly: each chain in turn, the draws of a chain as far apart as they can be.</summary>
    public double Even(int draw, int coordinate, int count)
    {
        var (chain, own) = (draw % ILogDensity.Lanes, draw / ILogDensity.Lanes);
        var ofChain = (count - chain + ILogDensity.Lanes - 1) / ILogDensity.Lanes;
        return draws[coordinate][chain][(int)((own + 0.5) * Count / ofChain)];
    }

    /// <summary>Room for more draws of each chain.</summary>
    internal void Extend(int count)
    {
        foreach (var chains in draws)
        {
            for (var chain = 0; chain < chains.Length; chain++)
            {
                Array.Resize(ref chains[chain], chains[chain].Length + count);
            }
        }
    }

    internal void Record(int chain, int draw, ReadOnlySpan<double> point)
    {
        for (var j = 0; j < point.Length; j++)
        {
            draws[j][chain][draw] = point[j];
        }
    }
}
