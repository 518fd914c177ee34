namespace Transport.Analysis;

/// <summary>One file of a study.</summary>
/// <param name="File">Its name in the study's folder.</param>
/// <param name="FirstPatient">Number of the first patient in it.</param>
/// <param name="LastPatient">Number of the last.</param>
/// <param name="FirstSeed">Seed of the first patient.</param>
/// <param name="LastSeed">Seed of the last.</param>
/// <param name="Rows">How many rows it holds.</param>
/// <param name="Sha256">Hash of its bytes.</param>
public sealed record StudyPart(string File, int FirstPatient, int LastPatient, int FirstSeed, int LastSeed, int Rows, string Sha256);
