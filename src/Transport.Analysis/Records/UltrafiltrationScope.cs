namespace Transport.Analysis;

/// <summary>What a book's total ultrafiltration counts.</summary>
public enum UltrafiltrationScope
{
    /// <summary>The cycles of the night: all they drained less all they filled.</summary>
    Night,

    /// <summary>The cycles and the initial drain, less the day fill that went in the morning before.</summary>
    NightAndInitialDrain,
}
