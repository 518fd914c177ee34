namespace Transport;

/// <summary>The body of one solute: a well-mixed pool that is filled by generation and emptied by membrane and kidneys.</summary>
/// <remarks>
/// d(V c)/dt = G − K c − what crosses the membrane. The peritoneal clearance is small beside the exchange between the compartments of the
/// body, so that one pool serves urea and creatinine; for β2-microglobulin it is a simplification.
/// </remarks>
public sealed record SolutePool
{
    /// <summary>Volume of β2-microglobulin's pool, L per kg: its extracellular fluid (memory).</summary>
    private const double LitersOfExtracellularFluidPerKilogram = 0.2;

    private SolutePool(Solute solute, bool isForResearch)
    {
        Solute = solute;
        IsForResearch = isForResearch;
    }

    /// <summary>The solute.</summary>
    public Solute Solute { get; }

    /// <summary>Whether its plasma level is no clinical figure: see <see cref="ForResearch"/>.</summary>
    public bool IsForResearch { get; }

    /// <summary>Size of the pool; null: body water of urea and creatinine, 0.2 L/kg of β2-microglobulin (memory).</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume? Volume
    {
        get;
        init => field = value is { } volume ? Require.MoreThanZero(volume, nameof(Volume)) : null;
    }

    /// <summary>Clearance by the kidneys; null: the patient's own of urea and of creatinine, otherwise none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance? RenalClearance
    {
        get;
        init => field = value is { } clearance ? Require.ZeroOrMore(clearance, nameof(RenalClearance)) : null;
    }

    /// <summary>
    /// Clearance by what is neither membrane nor kidney; none unless given. Creatinine is broken down at 0.038 L/kg/day,
    /// β2-microglobulin leaves by about 3 mL/min (both memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public Clearance OtherClearance
    {
        get;
        init => field = Require.ZeroOrMore(value, nameof(OtherClearance));
    }

    /// <summary>Generation in 24 h; null: found, so that the rhythm meets <see cref="Measured"/>, or else the patient's plasma as the mean.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public AmountOfSubstance? GenerationPerDay
    {
        get;
        init => field = value is { } amount ? Require.MoreThanZero(amount, nameof(GenerationPerDay)) : null;
    }

    /// <summary>A level that the rhythm has to meet; it has a say only where no generation is given.</summary>
    public PlasmaMeasurement? Measured { get; init; }

    /// <summary>Urea in body water.</summary>
    public static SolutePool Urea { get; } = new(Solutes.Urea, false);

    /// <summary>Creatinine in body water.</summary>
    public static SolutePool Creatinine { get; } = new(Solutes.Creatinine, false);

    /// <summary>β2-microglobulin in a fluid of its own. Needs a level or a generation, and a panel that follows it.</summary>
    public static SolutePool Beta2Microglobulin { get; } = new(Solutes.Beta2Microglobulin, false);

    /// <summary>
    /// A pool of any other solute, potassium and phosphate among them. For research only: diet, binders, bone and cells decide those levels, and a
    /// pool knows none of them. No report prints a level from it, and the outcome says that it was used.
    /// </summary>
    /// <param name="solute">The solute.</param>
    /// <param name="volume">Size of the pool.</param>
    /// <exception cref="ArgumentException">Urea, creatinine or β2-microglobulin, which have pools of their own; or glucose, sodium or its anion, which the body regulates.</exception>
    public static SolutePool ForResearch(Solute solute, Volume volume)
    {
        ArgumentNullException.ThrowIfNull(solute);
        Solute[] not = [Solutes.Urea, Solutes.Creatinine, Solutes.Beta2Microglobulin, Solutes.Glucose, Solutes.Sodium, Solutes.SodiumAnion];
        return not.Contains(solute)
            ? throw new ArgumentException($"{solute} has a pool of its own or none.", nameof(solute))
            : new(solute, true) { Volume = volume };
    }

    internal Volume VolumeIn(Patient patient) => Volume
        ?? (Solute == Solutes.Beta2Microglobulin
            ? Transport.Volume.FromLiters(LitersOfExtracellularFluidPerKilogram * patient.Weight.Kilograms)
            : patient.BodyWater);

    internal Clearance RenalClearanceOf(Patient patient) => RenalClearance
        ?? (Solute == Solutes.Urea ? patient.ResidualFunction.UreaClearance
            : Solute == Solutes.Creatinine ? patient.ResidualFunction.CreatinineClearance
            : default);
}
