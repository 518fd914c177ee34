namespace Transport.Analysis;

/// <summary>Whether a fit may be believed.</summary>
public enum FitStatus
{
    /// <summary>An optimum was found, the data moved at least one parameter, and they agree with the model.</summary>
    Converged,

    /// <summary>An optimum was found, but the data moved no parameter: what comes out is the population's.</summary>
    PriorReturned,

    /// <summary>
    /// The data do not tell a parameter that was asked for: more than nine tenths of its prior's spread are left, or without a prior some direction changes
    /// no observation.
    /// </summary>
    NotIdentifiable,

    /// <summary>An optimum was found, but the data lie further from it than their errors allow.</summary>
    DataContradictModel,

    /// <summary>The search stopped before it reached an optimum.</summary>
    IterationLimit,
}
