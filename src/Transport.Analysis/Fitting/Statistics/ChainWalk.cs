using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>Where four chains are, and their common step.</summary>
internal sealed class ChainWalk
{
    private const int Lanes = ILogDensity.Lanes;

    private readonly ILogDensity density;
    private readonly double independentShare;
    private readonly double walkLength;
    private readonly MersenneTwister random;
    private readonly Place[] current;
    private readonly Place[] proposed;
    private readonly double[] points;
    private readonly double[] logDensities = new double[Lanes];
    private StudentProposal proposal;

    public ChainWalk(ILogDensity density, StudentProposal proposal, SamplerOptions options)
    {
        (this.density, this.proposal) = (density, proposal);
        independentShare = options.IndependentShare;
        walkLength = 2.38 / Math.Sqrt(density.Dimension);
        random = new(options.Seed, threadSafe: false);
        (current, proposed) = (Places(), Places());
        points = new double[Lanes * density.Dimension];

        Place[] Places() => [.. Enumerable.Range(0, Lanes).Select(_ => new Place(density.Dimension))];
    }

    public int Evaluations { get; private set; }

    public int Accepted { get; private set; }

    /// <summary>Whether every chain has found a point with a density.</summary>
    public bool HasDensity => Array.TrueForAll(current, place => !double.IsNegativeInfinity(place.LogDensity));

    /// <summary>Proposes a point for each chain, evaluates the four at once and accepts or refuses each.</summary>
    public void Step()
    {
        for (var chain = 0; chain < Lanes; chain++)
        {
            Propose(current[chain], proposed[chain]);
            for (var j = 0; j < density.Dimension; j++)
            {
                points[Lanes * j + chain] = proposed[chain].Point[j];
            }
        }

        density.Evaluate(points, logDensities);
        Evaluations++;
        for (var chain = 0; chain < Lanes; chain++)
        {
            var (from, to) = (current[chain], proposed[chain]);
            to.LogDensity = logDensities[chain];
            var logRatio = to.LogDensity - from.LogDensity - (to.IsIndependent ? to.LogProposal - from.LogProposal : 0);

            // A ratio that is not a number (no density on either side) refuses.
            if (Math.Log(random.NextDouble()) < logRatio)
            {
                (current[chain], proposed[chain]) = (to, from);
                Accepted++;
            }
        }
    }

    /// <summary>Goes on with another proposal.</summary>
    public void Use(StudentProposal other)
    {
        proposal = other;
        foreach (var place in current)
        {
            proposal.FromPoint(place.Point, place.Standard);
            place.LogProposal = proposal.LogDensity(place.Standard);
        }
    }

    public void RecordInto(Chains chains, int draw)
    {
        for (var chain = 0; chain < Lanes; chain++)
        {
            chains.Record(chain, draw, current[chain].Point);
        }
    }

    private void Propose(Place from, Place to)
    {
        to.IsIndependent = double.IsNegativeInfinity(from.LogDensity) || random.NextDouble() < independentShare;
        if (to.IsIndependent)
        {
            proposal.Draw(random, to.Standard);
        }
        else
        {
            for (var j = 0; j < to.Standard.Length; j++)
            {
                to.Standard[j] = from.Standard[j] + walkLength * Normal.Sample(random, 0, 1);
            }
        }

        proposal.ToPoint(to.Standard, to.Point);
        to.LogProposal = proposal.LogDensity(to.Standard);
    }

    private sealed class Place(int dimension)
    {
        public double[] Point { get; } = new double[dimension];

        /// <summary>The point in the coordinates in which the proposal is spherical.</summary>
        public double[] Standard { get; } = new double[dimension];

        public double LogDensity { get; set; } = double.NegativeInfinity;

        public double LogProposal { get; set; }

        public bool IsIndependent { get; set; }
    }
}
