namespace Transport.Analysis;

/// <summary>What a regimen returns with a knob at one place.</summary>
/// <param name="Value">Where the knob stands, in its unit.</param>
/// <param name="Outlook">What it returns, with the difference from the regimen as it is; null where it cannot be carried out.</param>
/// <param name="Findings">Why not, or what to be careful about.</param>
public sealed record WhatIfPoint(double Value, RegimenOutlook? Outlook, IReadOnlyList<Finding> Findings);
