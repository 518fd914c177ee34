namespace Transport.Analysis;

/// <summary>What a book's words about complaints can be read as.</summary>
public enum Symptom
{
    /// <summary>Pain in the belly.</summary>
    AbdominalPain,

    /// <summary>Fever or shivering.</summary>
    Fever,

    /// <summary>Short of breath.</summary>
    Breathless,

    /// <summary>Swelling of legs, belly, groin or face.</summary>
    Swelling,

    /// <summary>Cramps, dizziness, faintness: signs that too much fluid may have been taken.</summary>
    Dry,

    /// <summary>Pain on filling or draining.</summary>
    FlowPain,

    /// <summary>Constipation, which slows drains.</summary>
    Constipation,
}
