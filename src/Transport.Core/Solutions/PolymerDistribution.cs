using System.Collections.Immutable;

namespace Transport;

/// <summary>A glucose polymer as fractions of molar mass, each of which passes the pores as a solute of its own.</summary>
/// <remarks>
/// Radius of a chain: a = 0.33 M^0.463 Å with M in g/mol; matches 16.1 Å at 4457 and 22.9 Å at 9479 g/mol (Membranes 2021;11:331, Table 1, read).
/// The fractions of the published simulations (Rippe and Levin, Kidney Int 2000;57:2546) have not been seen.
/// </remarks>
public sealed class PolymerDistribution
{
    /// <summary>Two glucose units, the shortest chain that scission leaves, g/mol.</summary>
    internal const double MaltoseMolarMass = 342.3;

    /// <summary>Mn of icodextrin, the chain that a rate of scission refers to, g/mol.</summary>
    internal const double MeanChain = 5700;

    // Label: Mn 5000 to 6500, Mw 13,000 to 19,000 g/mol, 75 g/L (read). These two in their middle, and the cuts, are a choice.
    private const double LabelWeightMean = 16_400;
    private const double LabelGramsPerLiter = 75;

    /// <summary>Any fractions, so that another distribution than the log-normal can be used.</summary>
    /// <param name="fractions">In order of molar mass, lightest first.</param>
    /// <exception cref="ArgumentException">There are none, they are out of order, or nothing is dissolved.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A concentration is negative.</exception>
    public PolymerDistribution(params IEnumerable<PolymerFraction> fractions)
    {
        Fractions = [.. fractions];
        for (var i = 0; i < Fractions.Length; i++)
        {
            Require.NotNegative(Fractions[i].Concentration.MillimolesPerLiter, "mmol/L", nameof(fractions));
            if (i > 0 && !(Fractions[i].Solute.MolarMassGramsPerMole > Fractions[i - 1].Solute.MolarMassGramsPerMole))
            {
                throw new ArgumentException($"Expected heavier fractions after lighter ones: {Fractions[i].Solute}.", nameof(fractions));
            }
        }

        if (!(Fractions.Sum(fraction => fraction.Concentration.MillimolesPerLiter) > 0))
        {
            throw new ArgumentException("A polymer needs a fraction of which something is dissolved.", nameof(fractions));
        }
    }

    /// <summary>The fractions, lightest first.</summary>
    public ImmutableArray<PolymerFraction> Fractions { get; }

    /// <summary>All chains of the fresh solution.</summary>
    public Concentration Chains => Fractions.Aggregate(default(Concentration), (sum, fraction) => sum + fraction.Concentration);

    /// <summary>Polymer in the fresh solution, g/L.</summary>
    public double GramsPerLiter => Fractions.Sum(fraction => fraction.GramsPerLiter);

    /// <summary>Mn: mass over number of chains, g/mol.</summary>
    public double NumberMeanGramsPerMole => 1000 * GramsPerLiter / Chains.MillimolesPerLiter;

    /// <summary>Mw: the mean weighted by mass, g/mol; slightly less than that of the chains themselves, since a fraction has one mass.</summary>
    public double WeightMeanGramsPerMole => Fractions.Sum(fraction => fraction.GramsPerLiter * fraction.Solute.MolarMassGramsPerMole) / GramsPerLiter;

    /// <summary>
    /// Icodextrin of a 7.5 % solution: log-normal with Mn 5700 and Mw 16,400 g/mol, 75 g/L (within a label's ranges, read; the middle and the cuts are a
    /// choice), in nine fractions, after maltose, of which the fresh solution has none.
    /// </summary>
    public static PolymerDistribution Icodextrin { get; } = LogNormal(
        "icodextrin", MeanChain, LabelWeightMean, LabelGramsPerLiter, [1000, 2000, 4000, 7000, 12_000, 20_000, 35_000, 60_000]);

    /// <summary>A log-normal polymer: chains whose number is normal over the logarithm of their mass.</summary>
    /// <param name="name">What the fractions are called, before their range.</param>
    /// <param name="numberMeanGramsPerMole">Mn, g/mol.</param>
    /// <param name="weightMeanGramsPerMole">Mw, g/mol; above Mn.</param>
    /// <param name="gramsPerLiter">All of it in the fresh solution, g/L.</param>
    /// <param name="cutsGramsPerMole">Where one fraction ends and the next begins, g/mol, rising.</param>
    /// <exception cref="ArgumentException">A cut is not above the one before or leaves nothing between.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A mean or the concentration is not positive, or Mw not above Mn.</exception>
    public static PolymerDistribution LogNormal(
        string name, double numberMeanGramsPerMole, double weightMeanGramsPerMole, double gramsPerLiter, IReadOnlyList<double> cutsGramsPerMole)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        ArgumentNullException.ThrowIfNull(cutsGramsPerMole);
        Require.Positive(numberMeanGramsPerMole, "g/mol", nameof(numberMeanGramsPerMole));
        Require.Positive(gramsPerLiter, "g/L", nameof(gramsPerLiter));
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(weightMeanGramsPerMole, numberMeanGramsPerMole);
        Require.Finite(weightMeanGramsPerMole, "g/mol");

        // Mw/Mn = e^(s²); the number's median is Mn e^(−s²/2), the mass' Mn e^(s²/2).
        var variance = Math.Log(weightMeanGramsPerMole / numberMeanGramsPerMole);
        var deviation = Math.Sqrt(variance);
        List<PolymerFraction> fractions = [new(Chain("maltose", MaltoseMolarMass), default)];
        double below = 0, number = 0, mass = 0;
        foreach (var cut in cutsGramsPerMole.Append(double.PositiveInfinity))
        {
            if (!(cut > below))
            {
                throw new ArgumentException("Expected rising cuts above zero.", nameof(cutsGramsPerMole));
            }

            var (numberUpTo, massUpTo) = (Share(cut, -0.5 * variance), Share(cut, 0.5 * variance));
            var (chains, weight) = (numberUpTo - number, massUpTo - mass);
            if (!(chains > 1e-12))
            {
                throw new ArgumentException(FormattableString.Invariant($"No chains between {below} and {cut} g/mol."), nameof(cutsGramsPerMole));
            }

            fractions.Add(new(
                Chain(Range(name, below, cut), numberMeanGramsPerMole * weight / chains),
                Concentration.FromMillimolesPerLiter(1000 * gramsPerLiter / numberMeanGramsPerMole * chains)));
            (below, number, mass) = (cut, numberUpTo, massUpTo);
        }

        return new(fractions);

        double Share(double molarMass, double shift) => double.IsPositiveInfinity(molarMass)
            ? 1
            : NormalDistribution.Cumulative((Math.Log(molarMass / numberMeanGramsPerMole) - shift) / deviation);
    }

    /// <summary>A chain as a solute.</summary>
    /// <param name="name">What tables call it.</param>
    /// <param name="molarMassGramsPerMole">Its molar mass, g/mol.</param>
    /// <exception cref="ArgumentOutOfRangeException">The mass is not positive.</exception>
    public static Solute Chain(string name, double molarMassGramsPerMole) =>
        new(name, molarMassGramsPerMole, 0.33 * Math.Pow(molarMassGramsPerMole, 0.463));

    /// <summary>
    /// What circulates in a regular user, per litre of plasma, to be added to <see cref="PlasmaComposition.Others"/>: maltose 1.1 g/L, chains of more
    /// than nine units 1.8 g/L (steady state after 7 to 10 days; register text, read), shorter ones 1 g/L (weak memory).
    /// </summary>
    /// <remarks>
    /// How the 1.8 g/L are spread is a choice: over the fractions from nine units to 12,000 g/mol, as in the fresh solution, because amylase
    /// leaves little that is longer. A first dwell meets none of it. Plasma sodium is then a few mmol/L lower (memory): state it as measured.
    /// </remarks>
    public ImmutableDictionary<Solute, Concentration> InPlasmaOfRegularUser()
    {
        const double nineUnits = 1477, longest = 12_000;
        var levels = ImmutableDictionary.CreateBuilder<Solute, Concentration>();
        Spread(1.1, _ => 1, solute => solute.MolarMassGramsPerMole < 400);
        Spread(1.0, fraction => fraction.GramsPerLiter, solute => solute.MolarMassGramsPerMole is >= 400 and < nineUnits);
        Spread(1.8, fraction => fraction.GramsPerLiter, solute => solute.MolarMassGramsPerMole is >= nineUnits and < longest);
        return levels.ToImmutable();

        void Spread(double grams, Func<PolymerFraction, double> weight, Func<Solute, bool> within)
        {
            var chosen = Fractions.Where(fraction => within(fraction.Solute)).ToList();
            var all = chosen.Sum(weight);
            foreach (var fraction in chosen.Where(_ => all > 0))
            {
                levels[fraction.Solute] = Concentration.FromGramsPerLiter(grams * weight(fraction) / all, fraction.Solute);
            }
        }
    }

    internal Concentration ConcentrationOf(Solute solute) =>
        Fractions.FirstOrDefault(fraction => fraction.Solute == solute)?.Concentration ?? default;

    private static string Range(string name, double from, double to) =>
        double.IsPositiveInfinity(to) ? FormattableString.Invariant($"{name} above {from:0} g/mol")
        : from > 0 ? FormattableString.Invariant($"{name} {from:0} to {to:0} g/mol")
        : FormattableString.Invariant($"{name} below {to:0} g/mol");
}
