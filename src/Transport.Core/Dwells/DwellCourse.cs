namespace Transport;

/// <summary>A simulated dwell: volume, solutes and flows at any time from its start to its end, and its landmarks.</summary>
/// <remarks>
/// Whatever the model of the membrane. Landmarks are located on the computed solution itself, a polynomial over each step, of which every root is
/// found: there is no grid that could step over one.
/// </remarks>
public sealed partial class DwellCourse
{
    private readonly IDwellSystem<Real> system;
    private readonly Trajectory trajectory;

    internal DwellCourse(
        Patient patient, IMembrane membrane, Dwell dwell, SolutePanel panel, IDwellSystem<Real> system, Trajectory trajectory)
    {
        Patient = patient;
        Membrane = membrane;
        Dwell = dwell;
        Panel = panel;
        this.system = system;
        this.trajectory = trajectory;
    }

    /// <summary>Whose plasma it was.</summary>
    public Patient Patient { get; }

    /// <summary>The membrane; one of pores also says at which plasma level it was simulated.</summary>
    public IMembrane Membrane { get; }

    /// <summary>The dwell.</summary>
    public Dwell Dwell { get; }

    /// <summary>The solutes that were followed.</summary>
    public SolutePanel Panel { get; }

    /// <summary>Integration steps that were taken.</summary>
    public int StepCount => trajectory.StepCount;

    /// <summary>Intraperitoneal volume.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Volume VolumeAt(TimeSpan time) => Volume.FromMilliliters(State(0, time));

    /// <summary>Net ultrafiltration so far: intraperitoneal volume minus that at the start.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Volume NetUltrafiltrationAt(TimeSpan time) => VolumeAt(time) - VolumeAt(TimeSpan.Zero);

    /// <summary>Dialysate concentration of a solute that is no protein.</summary>
    /// <exception cref="ArgumentException">The solute was not followed, or is a protein, which is only followed relative to plasma.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Concentration DialysateAt(Solute solute, TimeSpan time) => IndexOf(solute) is var index && !Solutes.IsProtein(solute)
        ? Concentration.FromMillimolesPerLiter(ConcentrationAt(index, time))
        : throw new ArgumentException($"{solute} is followed relative to plasma: ask for {nameof(DialysateToPlasmaAt)}.", nameof(solute));

    /// <summary>D/P, dimensionless, over plasma as the laboratory gives it (not plasma water).</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">Plasma holds none of it.</exception>
    public double DialysateToPlasmaAt(Solute solute, TimeSpan time) => PlasmaLevels[IndexOf(solute)] is var level and > 0
        ? ConcentrationAt(IndexOf(solute), time) / level
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
        var slot = AmountSlot(solute);
        return AmountOfSubstance.FromMicromoles(State(slot, time) - State(slot, TimeSpan.Zero));
    }

    /// <summary>Plasma cleared so far: the net amount from the blood over the plasma concentration.</summary>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    /// <exception cref="InvalidOperationException">Plasma holds none of it.</exception>
    public Volume ClearedAt(Solute solute, TimeSpan time) => IndexOf(solute) is var index && PlasmaLevels[index] > 0
        ? Volume.FromMilliliters((State(1 + index, time) - State(1 + index, TimeSpan.Zero)) / PlasmaLevels[index])
        : throw new InvalidOperationException($"Plasma holds no {solute}: nothing can be cleared of it.");

    /// <summary>Glucose absorbed so far; a polymer's is <see cref="PolymerAbsorbedAt"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Mass GlucoseAbsorbedAt(TimeSpan time) =>
        Mass.FromGrams(-RemovedAt(Solutes.Glucose, time).Millimoles * Solutes.Glucose.MolarMassGramsPerMole / 1000);

    /// <summary>Glucose polymer in the cavity, as mass of chains of any length; zero in a dwell of glucose.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Mass PolymerAt(TimeSpan time)
    {
        var grams = 0.0;
        for (var i = Panel.PolymerStart; i < Panel.Count; i++)
        {
            grams += State(1 + i, time) * 1e-6 * Panel.Solutes[i].MolarMassGramsPerMole;
        }

        return Mass.FromGrams(grams);
    }

    /// <summary>Glucose polymer absorbed so far; with plasma polymer the net amount.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The time is outside the dwell.</exception>
    public Mass PolymerAbsorbedAt(TimeSpan time) => PolymerAt(TimeSpan.Zero) - PolymerAt(time);

    // As the laboratory gives it, when first asked for.
    private double[] PlasmaLevels => field ??= CavityContents.Of(Patient.Plasma, Panel);

    private int IndexOf(Solute solute)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return Panel.IndexOf(solute);
    }

    private int AmountSlot(Solute solute) => IndexOf(solute) is var index && !Solutes.IsProtein(solute)
        ? 1 + index
        : throw new ArgumentException($"{solute} is followed relative to plasma: it has no amount.", nameof(solute));

    private double State(int component, TimeSpan time) => trajectory.At(component, time.TotalMinutes);

    private double ConcentrationAt(int index, TimeSpan time) => State(1 + index, time) / State(0, time);
}
