namespace Transport.Analysis;

/// <summary>
/// The layers of doubt of what is predicted over an ensemble: which of them a band holds, what each is made of, and the seed of each. The first layer, the
/// parameters, is the ensemble's members.
/// </summary>
/// <remarks>
/// A layer's draws follow from its own seed alone: another seed of one, more members, or a layer left out changes no draw of the others
/// (docs/decisions/0006).
/// </remarks>
public sealed record DoubtLayers
{
    /// <summary>Which layers a band of ultrafiltration holds.</summary>
    /// <value>Parameters and model form, the default of every chart.</value>
    /// <exception cref="ArgumentException">Parameters are not among them: a membrane that is known exactly is an ensemble of one.</exception>
    public Doubt Holds
    {
        get;
        init => field = value.HasFlag(Doubt.Parameters)
            ? value
            : throw new ArgumentException($"Expected {Doubt.Parameters} among the layers; found {value}. A membrane without doubt is an ensemble of one.", nameof(value));
    }
    = Doubt.Parameters | Doubt.ModelForm;

    /// <summary>What the model is known to miss: mean and deviation for each strength, mode and parameter set.</summary>
    public ModelDiscrepancies ModelForm { get; init; } = ModelDiscrepancies.MeanIncidentAdult;

    /// <summary>How differently the membrane works lying. It is held by days and nights of regimens, not by single dwells.</summary>
    public PostureShift Posture { get; init; } = PostureShift.UpToThatOfChildren;

    /// <summary>How nights differ: the patient's own once it is known.</summary>
    public NightVariation NightToNight { get; init; } = NightVariation.Starting;

    /// <summary>Seed of what the model misses.</summary>
    public int ModelFormSeed { get; init; } = 20261126;

    /// <summary>Seed of posture.</summary>
    public int PostureSeed { get; init; } = 20261128;

    /// <summary>Seed of the nights.</summary>
    public int NightToNightSeed { get; init; } = 20261127;

    /// <summary>Parameters and model form.</summary>
    public static DoubtLayers Default { get; } = new();

    /// <summary>Parameters alone.</summary>
    public static DoubtLayers ParametersAlone { get; } = new() { Holds = Doubt.Parameters };

    /// <summary>All three: what a single night may bring.</summary>
    public static DoubtLayers OfSingleNight { get; } = new() { Holds = Doubt.Parameters | Doubt.ModelForm | Doubt.NightToNight };

    /// <summary>For nights of a book, which have an offset of their own for what a night is no test in (<see cref="NightNoise.OffsetMilliliters"/>).</summary>
    internal static DoubtLayers OfReviews { get; } = new() { ModelForm = ModelDiscrepancies.MeanIncidentAdult with { DeviationOfCycles = default } };

    internal bool HoldsModelForm => Holds.HasFlag(Doubt.ModelForm);

    /// <summary>What is held of a figure that follows from the membrane alone.</summary>
    internal Doubt OfMembrane => Holds & (Doubt.Parameters | Doubt.Posture);

    /// <summary>What is held of a dwell that stands alone.</summary>
    internal Doubt OfDwells => Holds & ~Doubt.Posture;

    internal bool HoldsNightToNight => Holds.HasFlag(Doubt.NightToNight);

    /// <summary>The ensemble as it lies at night, where the layer is held.</summary>
    internal MembraneEnsemble AtNight(MembraneEnsemble ensemble) => Holds.HasFlag(Doubt.Posture) ? Posture.Of(ensemble, PostureSeed) : ensemble;

    /// <summary>What the model misses with a solution, or nothing where the layer is not held.</summary>
    internal ModelDiscrepancy Of(DialysisSolution solution, DialysisSolution? tested, ExchangeMode mode) =>
        HoldsModelForm ? ModelForm.Of(solution, tested, mode) : ModelDiscrepancy.None;
}
