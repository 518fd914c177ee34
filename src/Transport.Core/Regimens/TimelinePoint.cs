using System.Collections.Immutable;

namespace Transport;

/// <summary>The cavity at one moment.</summary>
public readonly record struct TimelinePoint
{
    private readonly SolutePanel panel;
    private readonly ImmutableArray<double> micromoles;

    internal TimelinePoint(
        TimeSpan time, RegimenPhase phase, Volume volume, Pressure pressure, PoreFlows flows, SolutePanel panel, ImmutableArray<double> micromoles)
    {
        (Time, Phase, Volume, Pressure, PoreFlows) = (time, phase, volume, pressure, flows);
        (this.panel, this.micromoles) = (panel, micromoles);
    }

    /// <summary>From the start of the night; in a week, of its first night.</summary>
    public TimeSpan Time { get; }

    /// <summary>What goes on.</summary>
    public RegimenPhase Phase { get; }

    /// <summary>Volume in the cavity.</summary>
    public Volume Volume { get; }

    /// <summary>Pressure in the cavity, lying, by day too: <see cref="RegimenOptions.Pressure"/>.</summary>
    public Pressure Pressure { get; }

    /// <summary>What passes the pore classes, into the cavity.</summary>
    public PoreFlows PoreFlows { get; }

    /// <summary>Its glucose.</summary>
    public Concentration Glucose => At(SolutePanel.Glucose);

    /// <summary>Its sodium.</summary>
    public Concentration Sodium => At(SolutePanel.Sodium);

    /// <summary>Concentration of any solute that is followed.</summary>
    /// <exception cref="ArgumentException">The solute was not followed, or it is a protein without a plasma level.</exception>
    public Concentration ConcentrationOf(Solute solute) => At(panel.IndexOf(solute));

    private Concentration At(int solute) => Concentration.FromMillimolesPerLiter(micromoles[solute] / Volume.Milliliters);
}
