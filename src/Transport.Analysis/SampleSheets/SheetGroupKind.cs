namespace Transport.Analysis;

/// <summary>What sheets that belong together make.</summary>
public enum SheetGroupKind
{
    /// <summary>One test.</summary>
    Test,

    /// <summary>Two first hours of one person with two strengths.</summary>
    Pair,

    /// <summary>Tests of one person over time.</summary>
    Series,

    /// <summary>A 24-h collection.</summary>
    Collection,
}
