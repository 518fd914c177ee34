namespace Transport;

/// <summary>Where the members of an ensemble come from.</summary>
public enum EnsembleSource
{
    /// <summary>One membrane, known exactly.</summary>
    Point,

    /// <summary>One patient's membrane, given a test.</summary>
    Posterior,

    /// <summary>A population, before any test.</summary>
    Prior,

    /// <summary>Membranes of a group of people.</summary>
    Cohort,
}
