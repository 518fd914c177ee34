namespace Transport.Studies;

/// <summary>How much a virtual person writes down.</summary>
public enum BookKind
{
    /// <summary>Ultrafiltration of the night.</summary>
    NightAlone,

    /// <summary>Ultrafiltration of night and day in one number, without the initial drain that would part them.</summary>
    NightAndDayAlone,

    /// <summary>Ultrafiltration of the night, and the initial drain.</summary>
    WithInitialDrain,

    /// <summary>That, what each cycle drained, and how long drains took.</summary>
    WithCycles,
}
