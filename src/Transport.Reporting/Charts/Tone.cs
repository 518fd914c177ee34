namespace Transport.Reporting;

/// <summary>
/// The voice in which something is drawn: one hue in three lightnesses, a neutral grey, and one accent. Colors are never the
/// only carrier of meaning; glucose strengths differ in lightness, line pattern and label, not in hue.
/// </summary>
public enum Tone
{
    /// <summary>The hue at its fullest: this patient, the main statement.</summary>
    Strong,

    /// <summary>The hue, second in rank.</summary>
    Middle,

    /// <summary>The hue at its palest, third in rank.</summary>
    Light,

    /// <summary>Grey: population, reference, what is there for comparison.</summary>
    Neutral,

    /// <summary>The accent: what the reader should look at. At most one thing in a figure.</summary>
    Attention,
}
