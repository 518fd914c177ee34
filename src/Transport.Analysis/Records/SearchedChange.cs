namespace Transport.Analysis;

/// <summary>What <see cref="ChangeSearch"/> finds.</summary>
/// <param name="Explanations">By weight.</param>
/// <param name="Began">Index of the night in the middle of the posterior.</param>
/// <param name="Earliest">Before it lie 5 % of the posterior.</param>
/// <param name="Latest">After it lie 5 %.</param>
/// <param name="Ultrafiltration">Change of a night's ultrafiltration on the last night looked at, mL.</param>
/// <param name="InitialDrain">Change of the initial drain on it, mL.</param>
internal sealed record SearchedChange(
    IReadOnlyList<Explanation> Explanations, int Began, int Earliest, int Latest, (double Mean, double Deviation) Ultrafiltration, (double Mean, double Deviation) InitialDrain);
