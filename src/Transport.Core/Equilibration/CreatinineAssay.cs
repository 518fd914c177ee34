namespace Transport;

/// <summary>How creatinine was measured, and how far glucose is read as creatinine.</summary>
/// <remarks>
/// An alkaline-picrate (Jaffe) assay reads glucose as creatinine: corrected = measured − factor × glucose, for dialysate and
/// plasma alike. The factor belongs to one laboratory and one reagent; Twardowski's, 0.000531415 mg/dL per mg/dL, was read in an
/// atlas (Khanna and Nolph, figure 4-9) and is no default here.
/// </remarks>
public sealed record CreatinineAssay
{
    /// <summary>An assay.</summary>
    /// <param name="method">The method.</param>
    /// <param name="glucoseFactor">mg/dL of creatinine read per mg/dL of glucose; null where the laboratory gave none.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is negative or not finite.</exception>
    public CreatinineAssay(CreatinineMethod method, double? glucoseFactor)
    {
        Method = method;
        GlucoseFactor = glucoseFactor is { } factor ? Require.NotNegative(factor, "", nameof(glucoseFactor)) : null;
    }

    /// <summary>The method.</summary>
    public CreatinineMethod Method { get; }

    /// <summary>mg/dL of creatinine read per mg/dL of glucose (equally g/L per g/L); null where the laboratory gave none.</summary>
    public double? GlucoseFactor { get; }

    /// <summary>Whether <see cref="Correct"/> changes anything.</summary>
    public bool Corrects => GlucoseFactor is > 0;

    /// <summary>Creatinine without what glucose added to it. Unchanged where the assay has no factor.</summary>
    /// <remarks>May fall slightly below zero by assay error; the reader of a sheet reports that.</remarks>
    public Concentration Correct(Concentration measured, Concentration glucose) =>
        Corrects
            ? measured - Concentration.FromGramsPerLiter(GlucoseFactor!.Value * glucose.GramsPerLiter(Solutes.Glucose), Solutes.Creatinine)
            : measured;
}
