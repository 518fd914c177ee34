namespace Transport;

/// <summary>Weekly Kt/V of urea, dimensionless.</summary>
/// <param name="PeritonealKtOverV">By the drains.</param>
/// <param name="RenalKtOverV">By the kidneys.</param>
public readonly record struct UreaDose(double PeritonealKtOverV, double RenalKtOverV)
{
    /// <summary>Both.</summary>
    public double TotalKtOverV => PeritonealKtOverV + RenalKtOverV;
}
