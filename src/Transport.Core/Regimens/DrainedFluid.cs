using System.Collections.Immutable;

namespace Transport;

/// <summary>What one drain brought: what a clinic finds in its bag.</summary>
public sealed class DrainedFluid
{
    private readonly SolutePanel panel;
    private readonly ImmutableArray<double> micromoles;

    internal DrainedFluid(TimeSpan start, RegimenPhase phase, Volume volume, SolutePanel panel, ImmutableArray<double> micromoles)
    {
        Start = start;
        Phase = phase;
        Volume = volume;
        this.panel = panel;
        this.micromoles = micromoles;
    }

    /// <summary>When the drain began, from the start of the first night.</summary>
    public TimeSpan Start { get; }

    /// <summary>Of the night, of the day, or the last one before the next night.</summary>
    public RegimenPhase Phase { get; }

    /// <summary>How much.</summary>
    public Volume Volume { get; }

    /// <summary>Amount of a solute in it.</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    /// <remarks>Of a protein without a plasma level there is no amount: it is then relative to plasma, in mL of plasma.</remarks>
    public AmountOfSubstance AmountOf(Solute solute) => AmountOfSubstance.FromMicromoles(micromoles[panel.IndexOf(solute)]);

    /// <summary>Concentration of a solute in it.</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    /// <exception cref="InvalidOperationException">Nothing was drained.</exception>
    public Concentration ConcentrationOf(Solute solute) => Volume.Milliliters > 0
        ? Concentration.FromMillimolesPerLiter(micromoles[panel.IndexOf(solute)] / Volume.Milliliters)
        : throw new InvalidOperationException("Nothing was drained.");
}
