namespace Transport.Analysis;

/// <summary>What was found where a sum of squares seems least. The gradient decides, not the minimizer's exit code.</summary>
internal enum LeastSquaresStatus
{
    /// <summary>The gradient is zero within the tolerance and the information is regular.</summary>
    Converged,

    /// <summary>The information is singular: some direction changes no residual, so its estimate is arbitrary. A prior that reaches every coordinate rules it out.</summary>
    NotIdentifiable,

    /// <summary>The gradient is not zero: the search ended before an optimum.</summary>
    IterationLimit,

    /// <summary>The model is defined at none of the starts.</summary>
    Undefined,
}
