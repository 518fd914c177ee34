namespace Transport.Analysis;

/// <summary>How drained fluid looks.</summary>
public enum EffluentLook
{
    /// <summary>Clear.</summary>
    Clear,

    /// <summary>Clear with strands of fibrin.</summary>
    Fibrin,

    /// <summary>Bloody.</summary>
    Bloody,

    /// <summary>Cloudy: a peritonitis until shown otherwise.</summary>
    Cloudy,

    /// <summary>Brown or green, or smelling of stool: as urgent as cloudy, since a bowel may have opened into the belly.</summary>
    Brown,
}
