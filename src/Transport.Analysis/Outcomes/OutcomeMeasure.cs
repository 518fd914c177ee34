namespace Transport.Analysis;

/// <summary>One figure that a regimen returns: what it is called, its unit, its formula, and where the formula is from.</summary>
/// <remarks>The measures are in <see cref="OutcomeMeasures"/>.</remarks>
public sealed class OutcomeMeasure
{
    internal OutcomeMeasure(string name, string unit, int decimals, string formula, string source, Doubt doubt, Func<MeasuredDay, double?> read)
    {
        (Name, Unit, Decimals, Formula, Source, Doubt) = (name, unit, decimals, formula, source, doubt);
        Read = read;
    }

    /// <summary>What tables and charts call it.</summary>
    public string Name { get; }

    /// <summary>Its unit; empty for a ratio.</summary>
    public string Unit { get; }

    /// <summary>How many decimals it is printed with.</summary>
    public int Decimals { get; }

    /// <summary>How it is computed.</summary>
    public string Formula { get; }

    /// <summary>Where the formula or its constants are from, with their mark.</summary>
    public string Source { get; }

    /// <summary>Which layers of doubt a band of it can hold.</summary>
    public Doubt Doubt { get; }

    /// <summary>Whether the kidneys' clearance is in it.</summary>
    public bool HoldsKidneys => Kidneys is not null;

    /// <summary>Whether what it holds of the kidneys is known; where not, it is not given, since a number would be read as a total.</summary>
    public bool IsKnownWith(ResidualFunction kidneys)
    {
        ArgumentNullException.ThrowIfNull(kidneys);
        return Kidneys?.Invoke(kidneys) ?? true;
    }

    /// <summary>Whether the clearance of the kidneys that it holds is known; null: it holds none.</summary>
    internal Func<ResidualFunction, bool>? Kidneys { get; init; }

    /// <summary>Standard deviation of a single day around a mean; null where it is not known.</summary>
    internal Func<double, NightVariation, double>? DayToDay { get; init; }

    /// <summary>What a band of it holds whatever was asked for: sodium the doubt of its calibration.</summary>
    internal Doubt Always { get; init; }

    /// <summary>Which layers a band holds of those that were asked for.</summary>
    internal Doubt HeldOf(DoubtLayers layers) => (Doubt & (layers.Holds | Always)) | (Doubt.HasFlag(Doubt.Parameters) ? layers.OfMembrane : Doubt.None);

    /// <summary>Why it is not given where it is not, in a clause.</summary>
    public string Reason { get; internal init; } = "not measured or not followed";

    /// <summary>Null where the day does not say: a solute without a plasma level, an option that was not given.</summary>
    internal Func<MeasuredDay, double?> Read { get; }

    /// <summary>"Kt/V urea, total".</summary>
    public override string ToString() => Name;
}
