namespace Transport.Analysis;

/// <summary>A fit and what a comparison calls it.</summary>
/// <param name="Name">What tells it from the others: "three pores", "one barrier".</param>
/// <param name="Fit">The fit.</param>
public sealed record NamedFit(string Name, FittedModel Fit);
