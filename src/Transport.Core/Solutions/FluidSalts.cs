namespace Transport;

/// <summary>What a list of contents says was weighed into a fresh fluid; its ions and osmolarity follow.</summary>
/// <remarks>Complete dissociation. Molar masses in g/mol are physics, as catalogues of chemicals print them; lactate is the racemate's anion.</remarks>
public sealed record FluidSalts
{
    private const double SodiumChlorideMass = 58.443;
    private const double SodiumLactateMass = 112.06;
    private const double SodiumBicarbonateMass = 84.007;
    private const double CalciumChlorideDihydrateMass = 147.01;
    private const double MagnesiumChlorideHexahydrateMass = 203.30;
    private const double GlucoseMass = 180.156;
    private const double GlucoseMonohydrateMass = 198.171;

    /// <summary>NaCl.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration SodiumChloride { get; init => field = Require.ZeroOrMore(value, nameof(SodiumChloride)); }

    /// <summary>Sodium lactate.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration SodiumLactate { get; init => field = Require.ZeroOrMore(value, nameof(SodiumLactate)); }

    /// <summary>NaHCO3.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration SodiumBicarbonate { get; init => field = Require.ZeroOrMore(value, nameof(SodiumBicarbonate)); }

    /// <summary>CaCl2·2H2O.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration CalciumChlorideDihydrate { get; init => field = Require.ZeroOrMore(value, nameof(CalciumChlorideDihydrate)); }

    /// <summary>MgCl2·6H2O.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration MagnesiumChlorideHexahydrate { get; init => field = Require.ZeroOrMore(value, nameof(MagnesiumChlorideHexahydrate)); }

    /// <summary>Anhydrous glucose. A label may mean the monohydrate by the same word: see <see cref="GlucoseMonohydrate"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration Glucose { get; init => field = Require.ZeroOrMore(value, nameof(Glucose)); }

    /// <summary>Glucose monohydrate, a tenth heavier for the same glucose.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative.</exception>
    public MassConcentration GlucoseMonohydrate { get; init => field = Require.ZeroOrMore(value, nameof(GlucoseMonohydrate)); }

    /// <summary>The ions and the glucose.</summary>
    public FluidComposition ToComposition()
    {
        var (chloride, lactate, bicarbonate) = (Of(SodiumChloride, SodiumChlorideMass), Of(SodiumLactate, SodiumLactateMass), Of(SodiumBicarbonate, SodiumBicarbonateMass));
        var (calcium, magnesium) = (Of(CalciumChlorideDihydrate, CalciumChlorideDihydrateMass), Of(MagnesiumChlorideHexahydrate, MagnesiumChlorideHexahydrateMass));
        return new()
        {
            Sodium = chloride + lactate + bicarbonate,
            Calcium = calcium,
            Magnesium = magnesium,
            Chloride = chloride + calcium * 2 + magnesium * 2,
            Lactate = lactate,
            Bicarbonate = bicarbonate,
            Glucose = Of(Glucose, GlucoseMass) + Of(GlucoseMonohydrate, GlucoseMonohydrateMass),
        };
    }

    private static Concentration Of(MassConcentration salt, double gramsPerMole) => Concentration.FromMillimolesPerLiter(1000 * salt.GramsPerLiter / gramsPerMole);
}
