namespace Transport.Analysis;

/// <summary>A membrane that returns published ultrafiltration with a glucose polymer, and how sure its two numbers are.</summary>
/// <param name="Membrane">The membrane, with both numbers in it.</param>
/// <param name="EfficiencyError">Standard error of <see cref="ThreePoreMembrane.PolymerOsmoticEfficiency"/>, from those of the two means.</param>
/// <param name="UptakeError">Standard error of <see cref="ThreePoreMembrane.PolymerTissueUptake"/>, from those of the two means.</param>
/// <param name="Correlation">Between the two errors.</param>
public sealed record CalibratedPolymer(ThreePoreMembrane Membrane, double EfficiencyError, Clearance UptakeError, double Correlation);
