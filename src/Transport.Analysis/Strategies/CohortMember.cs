namespace Transport.Analysis;

/// <summary>One person of a cohort: who was tested and what the fit made of it.</summary>
/// <param name="Patient">Size, plasma, kidneys.</param>
/// <param name="Membrane">The fitted membrane, at the patient's size.</param>
public sealed record CohortMember(Patient Patient, ThreePoreMembrane Membrane);
