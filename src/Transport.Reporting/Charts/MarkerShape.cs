namespace Transport.Reporting;

/// <summary>What stands at each point of a series.</summary>
public enum MarkerShape
{
    /// <summary>Nothing; the line is enough.</summary>
    None,

    /// <summary>A filled disc.</summary>
    Circle,

    /// <summary>A ring; lies open over other points.</summary>
    Ring,

    /// <summary>A filled square.</summary>
    Square,

    /// <summary>A filled triangle, tip up.</summary>
    Triangle,

    /// <summary>A filled diamond.</summary>
    Diamond,

    /// <summary>A short upright stroke, as for the center of a range.</summary>
    Tick,
}
