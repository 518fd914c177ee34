namespace Transport.Analysis;

/// <summary>What <see cref="ChangeSearch"/> finds.</summary>
/// <param name="Explanations">By weight.</param>
/// <param name="Began">Index of the night in the middle of the posterior.</param>
/// <param name="Earliest">Before it lie 5 % of the posterior.</param>
/// <param name="Latest">After it lie 5 %.</param>
/// <param name="Ultrafiltration">Change of the ultrafiltration on the last night looked at, mL; null where no night since the change began has any.</param>
/// <param name="HoldsDay">Whether that is of night and day in one number.</param>
/// <param name="InitialDrain">Change of the initial drain on that night, mL, likewise.</param>
internal sealed record SearchedChange(
    IReadOnlyList<Explanation> Explanations, int Began, int Earliest, int Latest, (double Mean, double Deviation)? Ultrafiltration, bool HoldsDay, (double Mean, double Deviation)? InitialDrain);
