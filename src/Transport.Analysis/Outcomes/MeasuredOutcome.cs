namespace Transport.Analysis;

/// <summary>One figure of a regimen over an ensemble, and what it is more than the present regimen's.</summary>
/// <param name="Measure">Which figure.</param>
/// <param name="Value">Median and 90 % band; null where it cannot be given.</param>
/// <param name="Difference">
/// The regimen's less the present one's, member by member: what both have in common in doubt cancels. Null where either cannot be given, and for the
/// present regimen itself.
/// </param>
public sealed record MeasuredOutcome(OutcomeMeasure Measure, Band<double>? Value, Band<double>? Difference);
