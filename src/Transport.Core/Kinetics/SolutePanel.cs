namespace Transport;

/// <summary>Which solutes a simulation follows. The first four act osmotically and are always there; an icodextrin dwell adds its fractions.</summary>
/// <remarks>
/// Sodium's anion has no slot: in the plain model its course is sodium's to the last digit, so sodium simply counts twice osmotically.
/// </remarks>
public sealed class SolutePanel
{
    internal const int Urea = 0;
    internal const int Creatinine = 1;
    internal const int Glucose = 2;
    internal const int Sodium = 3;

    private SolutePanel(params Solute[] solutes)
        : this(solutes, solutes.Length)
    {
    }

    private SolutePanel(Solute[] solutes, int polymerStart)
    {
        Solutes = solutes;
        PolymerStart = polymerStart;
    }

    /// <summary>Urea, creatinine, glucose, sodium: what regimens and fits need, and the fastest.</summary>
    public static SolutePanel Small { get; } = new(
        Transport.Solutes.Urea, Transport.Solutes.Creatinine, Transport.Solutes.Glucose, Transport.Solutes.Sodium);

    /// <summary>The small panel and three proteins.</summary>
    public static SolutePanel Full { get; } = new(
        [.. Small.Solutes, Transport.Solutes.Beta2Microglobulin, Transport.Solutes.Albumin, Transport.Solutes.ImmunoglobulinG]);

    /// <summary>The small panel and others: electrolytes, proteins, or a solute of one's own.</summary>
    /// <param name="others">What to follow besides the small panel.</param>
    /// <exception cref="ArgumentException">A solute is named twice or is in the small panel, where sodium stands for its anion too.</exception>
    /// <remarks>
    /// Those others are carried by the fluid and do not draw it: the course of volume is that of the small panel. Their plasma concentrations have
    /// to be stated in <see cref="PlasmaComposition.Others"/>.
    /// </remarks>
    public static SolutePanel Of(params IEnumerable<Solute> others)
    {
        Solute[] all = [.. Small.Solutes, .. others];
        var twice = all.Append(Transport.Solutes.SodiumAnion).GroupBy(solute => solute).FirstOrDefault(group => group.Count() > 1);
        return twice is null
            ? new(all)
            : throw new ArgumentException($"Expected each solute once, none of the small panel's: {twice.Key}.", nameof(others));
    }

    /// <summary>The solutes, in the order of the state.</summary>
    public IReadOnlyList<Solute> Solutes { get; }

    internal int Count => Solutes.Count;

    /// <summary>Slot of a polymer's lightest fraction, which the heavier ones follow; <see cref="Count"/> where there is no polymer.</summary>
    internal int PolymerStart { get; }

    /// <summary>This panel with the fractions of a polymer, which draw fluid; the panel itself where there is none.</summary>
    internal SolutePanel With(PolymerDistribution? polymer) => polymer is null || PolymerStart < Count
        ? this
        : new([.. Solutes, .. polymer.Fractions.Select(fraction => fraction.Solute)], Count);

    /// <summary>Whether all fractions of a polymer are in it; so it is of none.</summary>
    internal bool Follows(PolymerDistribution? polymer) => polymer is null || polymer.Fractions.All(fraction => IsPolymer(fraction.Solute));

    internal bool IsPolymer(Solute solute) => Solutes.Skip(PolymerStart).Contains(solute);

    internal int IndexOf(Solute solute)
    {
        var sought = solute == Transport.Solutes.SodiumAnion ? Transport.Solutes.Sodium : solute;
        for (var i = 0; i < Solutes.Count; i++)
        {
            if (Solutes[i] == sought)
            {
                return i;
            }
        }

        throw new ArgumentException($"{solute} is not in the panel that was simulated.", nameof(solute));
    }

    /// <summary>The solutes that pull water, besides a polymer's fractions: those whose <see cref="OsmoticWeight"/> is not zero.</summary>
    internal static ReadOnlySpan<int> Osmotic => [Urea, Glucose, Sodium];

    // Osmotic weight: creatinine (about 1 mmol/L) and proteins (in ΔΠ already) do not count; sodium counts for its anion too.
    internal static double OsmoticWeight(int index) => index switch
    {
        Urea or Glucose => 1,
        Sodium => 2,
        _ => 0,
    };
}
