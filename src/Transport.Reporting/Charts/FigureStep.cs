namespace Transport.Reporting;

/// <summary>One position of a knob and the figure it gives.</summary>
/// <param name="Label">The position as printed, such as "2000 mL".</param>
/// <param name="Figure">What is seen there.</param>
public sealed record FigureStep(string Label, Figure Figure);
