namespace Transport;

/// <summary>How a figure is known.</summary>
public enum Evidence
{
    /// <summary>Seen in print: an abstract, an excerpt, a page.</summary>
    Read,

    /// <summary>Recalled from the named publication, not verified against it.</summary>
    Memory,

    /// <summary>Computed from first principles or from figures that were read.</summary>
    Computed,

    /// <summary>This project's own choice.</summary>
    Choice,
}
