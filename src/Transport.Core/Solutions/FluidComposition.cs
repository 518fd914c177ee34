using static System.FormattableString;

namespace Transport;

/// <summary>Ions and glucose of a fresh fluid.</summary>
public sealed record FluidComposition
{
    /// <summary>Sodium.</summary>
    public required Concentration Sodium { get; init => field = Require.ZeroOrMore(value, nameof(Sodium)); }

    /// <summary>Calcium.</summary>
    public Concentration Calcium { get; init => field = Require.ZeroOrMore(value, nameof(Calcium)); }

    /// <summary>Magnesium.</summary>
    public Concentration Magnesium { get; init => field = Require.ZeroOrMore(value, nameof(Magnesium)); }

    /// <summary>Chloride.</summary>
    public Concentration Chloride { get; init => field = Require.ZeroOrMore(value, nameof(Chloride)); }

    /// <summary>Lactate.</summary>
    public Concentration Lactate { get; init => field = Require.ZeroOrMore(value, nameof(Lactate)); }

    /// <summary>Bicarbonate.</summary>
    public Concentration Bicarbonate { get; init => field = Require.ZeroOrMore(value, nameof(Bicarbonate)); }

    /// <summary>Anhydrous glucose.</summary>
    public Concentration Glucose { get; init => field = Require.ZeroOrMore(value, nameof(Glucose)); }

    /// <summary>All particles together, mmol/L, which labels print as mOsm/L: each counts as one, none is bound, a polymer is not among them.</summary>
    public Concentration Osmolarity => Sodium + Calcium + Magnesium + Chloride + Lactate + Bicarbonate + Glucose;

    /// <summary>Positive less negative charges, mmol/L of elementary charges; about zero where the list of contents is complete.</summary>
    public Concentration ChargeBalance => Sodium + Calcium * 2 + Magnesium * 2 - Chloride - Lactate - Bicarbonate;

    /// <summary>The glucose solution of this composition.</summary>
    /// <param name="name">What tables and charts call it.</param>
    public DialysisSolution ToSolution(string name) => new(name, Glucose, Sodium)
    {
        Others = OtherSolutes.None.AddRange(new Dictionary<Solute, Concentration>
        {
            [Solutes.Lactate] = Lactate,
            [Solutes.Bicarbonate] = Bicarbonate,
            [Solutes.Calcium] = Calcium,
            [Solutes.Magnesium] = Magnesium,
        }.Where(pair => pair.Value > default(Concentration))),
    };

    /// <summary>"sodium 132.0, lactate 40.0 … mmol/L; 346 mOsm/L", invariant culture.</summary>
    public override string ToString() => string.Join(", ", new (string Name, Concentration Value)[]
    {
        ("sodium", Sodium), ("calcium", Calcium), ("magnesium", Magnesium), ("chloride", Chloride), ("lactate", Lactate), ("bicarbonate", Bicarbonate), ("glucose", Glucose),
    }.Where(ion => ion.Value > default(Concentration)).Select(ion => Invariant($"{ion.Name} {ion.Value.MillimolesPerLiter:0.##}"))) + Invariant($" mmol/L; {Osmolarity.MillimolesPerLiter:0} mOsm/L");
}
