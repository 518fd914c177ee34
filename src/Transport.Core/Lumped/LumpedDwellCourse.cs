namespace Transport;

/// <summary>A dwell simulated with the classical membrane: volume and solutes at any time. The members are those of <see cref="DwellCourse"/>.</summary>
public sealed class LumpedDwellCourse
{
    private readonly Trajectory trajectory;
    private readonly double[] plasma;

    internal LumpedDwellCourse(Patient patient, LumpedMembrane membrane, Dwell dwell, SolutePanel panel, double[] plasma, Trajectory trajectory)
    {
        Patient = patient;
        Membrane = membrane;
        Dwell = dwell;
        Panel = panel;
        this.plasma = plasma;
        this.trajectory = trajectory;
    }

    /// <summary>Whose plasma it was.</summary>
    public Patient Patient { get; }

    /// <summary>The membrane.</summary>
    public LumpedMembrane Membrane { get; }

    /// <summary>The dwell.</summary>
    public Dwell Dwell { get; }

    /// <summary>The solutes that were followed.</summary>
    public SolutePanel Panel { get; }

    /// <summary>Intraperitoneal volume.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Volume VolumeAt(TimeSpan time) => Volume.FromMilliliters(State(0, time));

    /// <summary>Net ultrafiltration so far: intraperitoneal volume minus that at the start.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Volume NetUltrafiltrationAt(TimeSpan time) => VolumeAt(time) - VolumeAt(TimeSpan.Zero);

    /// <summary>What osmosis has drawn so far, before absorption.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Volume TranscapillaryUltrafiltrationAt(TimeSpan time) => Volume.FromMilliliters(State(1 + Panel.Count, time));

    /// <summary>Dialysate concentration of a solute that is no protein.</summary>
    /// <exception cref="ArgumentException">The solute was not followed, or is a protein.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Concentration DialysateAt(Solute solute, TimeSpan time) => Concentration.FromMillimolesPerLiter(ConcentrationAt(NoProtein(solute), time));

    /// <summary>D/P, dimensionless.</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">Plasma holds none of it.</exception>
    public double DialysateToPlasmaAt(Solute solute, TimeSpan time) => IndexOf(solute) is var index && plasma[index] > 0
        ? ConcentrationAt(index, time) / plasma[index]
        : throw new InvalidOperationException($"Plasma holds no {solute}: there is no D/P.");

    /// <summary>D/D0 of glucose, dimensionless, over the mixed fluid at the start of the dwell.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">There was no glucose at the start.</exception>
    public double GlucoseToInitialAt(TimeSpan time) => ConcentrationAt(SolutePanel.Glucose, TimeSpan.Zero) is var initial and > 0
        ? ConcentrationAt(SolutePanel.Glucose, time) / initial
        : throw new InvalidOperationException("There was no glucose at the start of the dwell: there is no D/D0.");

    /// <summary>Net amount that has come from the blood; negative where more was absorbed.</summary>
    /// <exception cref="ArgumentException">The solute was not followed, or is a protein.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public AmountOfSubstance RemovedAt(Solute solute, TimeSpan time)
    {
        var slot = 1 + NoProtein(solute);
        return AmountOfSubstance.FromMicromoles(State(slot, time) - State(slot, TimeSpan.Zero));
    }

    private int NoProtein(Solute solute) => IndexOf(solute) is var index && !Solutes.IsProtein(solute)
        ? index
        : throw new ArgumentException($"{solute} is followed relative to plasma: ask for {nameof(DialysateToPlasmaAt)}.", nameof(solute));

    private int IndexOf(Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return Panel.IndexOf(solute);
    }

    private double State(int component, TimeSpan time) => trajectory.At(component, time.TotalMinutes);

    private double ConcentrationAt(int index, TimeSpan time) => State(1 + index, time) / State(0, time);
}
