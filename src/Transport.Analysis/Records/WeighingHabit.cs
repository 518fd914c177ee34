namespace Transport.Analysis;

/// <summary>Whether the belly holds fluid when the weight is taken.</summary>
public enum WeighingHabit
{
    /// <summary>Drained.</summary>
    Empty,

    /// <summary>With the fill inside, which the scales count.</summary>
    Full,
}
