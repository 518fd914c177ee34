using System.Collections.Immutable;
using System.Globalization;

namespace Transport;

/// <summary>A fresh dialysis solution.</summary>
/// <remarks>
/// Glucose is always a concentration, never inferred from a percentage: two labelling conventions (anhydrous and
/// monohydrate) differ by 10 %. Compositions: reference-data/dialysis-solutions.
/// </remarks>
public sealed record DialysisSolution
{
    /// <summary>A solution.</summary>
    /// <param name="name">What tables and charts call it.</param>
    /// <param name="glucose">Anhydrous glucose.</param>
    /// <param name="sodium">Sodium.</param>
    /// <param name="agent">What draws the water.</param>
    /// <exception cref="ArgumentOutOfRangeException">A concentration is negative.</exception>
    public DialysisSolution(string name, Concentration glucose, Concentration sodium, OsmoticAgent agent = OsmoticAgent.Glucose)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(name);
        Require.NotNegative(glucose.MillimolesPerLiter, "mmol/L", nameof(glucose));
        Require.NotNegative(sodium.MillimolesPerLiter, "mmol/L", nameof(sodium));
        Name = name;
        Glucose = glucose;
        Sodium = sodium;
        Agent = agent;
        Polymer = agent == OsmoticAgent.Icodextrin ? PolymerDistribution.Icodextrin : null;
    }

    /// <summary>What tables and charts call it.</summary>
    public string Name { get; }

    /// <summary>Anhydrous glucose.</summary>
    public Concentration Glucose { get; }

    /// <summary>Sodium.</summary>
    public Concentration Sodium { get; }

    /// <summary>What draws the water.</summary>
    public OsmoticAgent Agent { get; }

    /// <summary>The polymer of an icodextrin solution, by fractions; null for every other.</summary>
    /// <exception cref="ArgumentException">An icodextrin solution is left without, or another is given one.</exception>
    public PolymerDistribution? Polymer
    {
        get;
        init => field = value is null == (Agent != OsmoticAgent.Icodextrin)
            ? value
            : throw new ArgumentException("An icodextrin solution holds a polymer, and no other does.", nameof(Polymer));
    }

    /// <summary>Of which two bags a machine mixes it; null where it is of one bag.</summary>
    public SolutionMix? Mix { get; internal init; }

    /// <summary>The bags that it is of, each with its share of the volume.</summary>
    internal ImmutableArray<(DialysisSolution Solution, double Share)> Bags => Mix is { } mix ? [(mix.First, mix.FirstShare), (mix.Second, 1 - mix.FirstShare)] : [(this, 1)];

    /// <summary>What its use does to other measurements, to be said wherever it appears; null where there is nothing to say.</summary>
    public string? Caution => Agent != OsmoticAgent.Icodextrin ? null :
        "Icodextrin: some glucose meters read falsely high at all hours during its use (read) and for about two weeks after (memory), which has led to wrong insulin doses; the laboratory knows which meters do. Serum amylase reads falsely low (memory). Plasma sodium falls by a few mmol/L (memory).";

    /// <summary>Other solutes in it; it holds none of what is not listed. Of potassium and phosphate that is true of the usual solutions.</summary>
    /// <remarks>A mix that is given other solutes is no longer of its two bags: it counts as a fluid of one bag.</remarks>
    /// <exception cref="ArgumentException">A solute has a property of its own.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A concentration is negative.</exception>
    public ImmutableDictionary<Solute, Concentration> Others
    {
        get;
        init
        {
            field = OtherSolutes.Check(value);
            Mix = null;
        }
    }
    = OtherSolutes.None;

    /// <summary>
    /// What a usual lactate solution holds besides glucose and sodium: lactate 40, calcium 1.25, magnesium 0.25 mmol/L (computed from the salts of
    /// a label; other bags have calcium 1.75 or lactate 35).
    /// </summary>
    public static ImmutableDictionary<Solute, Concentration> LactateBuffer { get; } = ImmutableDictionary.CreateRange<Solute, Concentration>(
    [
        new(Solutes.Lactate, Concentration.FromMillimolesPerLiter(40)),
        new(Solutes.Calcium, Concentration.FromMillimolesPerLiter(1.25)),
        new(Solutes.Magnesium, Concentration.FromMillimolesPerLiter(0.25)),
    ]);

    /// <summary>Glucose 1.36 % anhydrous (1.5 % monohydrate): 75.5 mmol/L, sodium 132 mmol/L.</summary>
    public static DialysisSolution Glucose136 { get; } = OfGlucose(75.5);

    /// <summary>Glucose 2.27 % anhydrous (2.5 % monohydrate): 126.0 mmol/L, sodium 132 mmol/L.</summary>
    public static DialysisSolution Glucose227 { get; } = OfGlucose(126.0);

    /// <summary>Glucose 3.86 % anhydrous (4.25 % monohydrate): 214.3 mmol/L, sodium 132 mmol/L.</summary>
    public static DialysisSolution Glucose386 { get; } = OfGlucose(214.3);

    /// <summary>The three usual glucose strengths, weakest first.</summary>
    public static IReadOnlyList<DialysisSolution> UsualGlucose { get; } = [Glucose136, Glucose227, Glucose386];

    /// <summary>Icodextrin 7.5 %: 75 g/L, sodium 132, lactate 40, calcium 1.75, magnesium 0.25 mmol/L, no glucose (label text, read).</summary>
    public static DialysisSolution Icodextrin { get; } =
        new("icodextrin 7.5 %", default, Concentration.FromMillimolesPerLiter(132.0), OsmoticAgent.Icodextrin)
        {
            Others = LactateBuffer.SetItem(Solutes.Calcium, Concentration.FromMillimolesPerLiter(1.75)),
        };

    /// <summary>A glucose solution with sodium 132 mmol/L and a lactate buffer, named by its anhydrous percentage.</summary>
    /// <param name="glucoseMillimolesPerLiter">Anhydrous glucose, mmol/L.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative or not finite.</exception>
    public static DialysisSolution OfGlucose(double glucoseMillimolesPerLiter)
    {
        var glucose = Concentration.FromMillimolesPerLiter(glucoseMillimolesPerLiter);
        var percent = (glucose.GramsPerLiter(Solutes.Glucose) / 10).ToString("0.00", CultureInfo.InvariantCulture);
        return new($"glucose {percent} %", glucose, Concentration.FromMillimolesPerLiter(132.0)) { Others = LactateBuffer };
    }

    /// <summary>Equal if the name and all that it holds are.</summary>
    public bool Equals(DialysisSolution? other) => ReferenceEquals(this, other) || (other is not null
        && Name == other.Name && Glucose == other.Glucose && Sodium == other.Sodium && Agent == other.Agent && Equals(Polymer, other.Polymer) && Equals(Mix, other.Mix)
        && (ReferenceEquals(Others, other.Others) || (Others.Count == other.Others.Count && Others.All(held => other.Others.TryGetValue(held.Key, out var there) && there == held.Value))));

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Glucose, Sodium, Agent);

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
