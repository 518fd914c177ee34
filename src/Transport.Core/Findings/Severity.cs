namespace Transport;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing is wrong.</summary>
    Note,

    /// <summary>The result stands but is to be read with care.</summary>
    Warning,

    /// <summary>The result cannot be computed or trusted.</summary>
    Error,
}
