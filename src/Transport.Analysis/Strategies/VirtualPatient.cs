namespace Transport.Analysis;

/// <summary>A patient who does not exist and the membrane that nobody can see.</summary>
/// <param name="Number">Place in the population, from 0.</param>
/// <param name="Seed">Seed of everything that is drawn for this patient after the membrane.</param>
/// <param name="Patient">Size, plasma, kidneys.</param>
/// <param name="Membrane">The truth, at the patient's size.</param>
public sealed record VirtualPatient(int Number, int Seed, Patient Patient, ThreePoreMembrane Membrane);
