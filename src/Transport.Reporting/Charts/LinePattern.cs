namespace Transport.Reporting;

/// <summary>How the points of a series are joined. Patterns carry meaning, so that a chart survives a grey printer.</summary>
public enum LinePattern
{
    /// <summary>Solid: measured, tested, or computed for what was tested.</summary>
    Solid,

    /// <summary>Dashed: extrapolated, "not tested".</summary>
    Dash,

    /// <summary>Dotted: a reference or an alternative.</summary>
    Dot,

    /// <summary>Dashes and dots in turn.</summary>
    DashDot,

    /// <summary>Not joined: the points stand alone and need a marker.</summary>
    None,
}
