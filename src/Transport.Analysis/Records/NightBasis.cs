namespace Transport.Analysis;

/// <summary>What a night is set beside.</summary>
/// <param name="Response">The regimen of the night.</param>
/// <param name="Before">The regimen whose day fill comes out in the evening; null where none was filled.</param>
/// <param name="NightCorrection">What lost dwell and plasma glucose add to the night's ultrafiltration, mL.</param>
/// <param name="DayCorrection">What plasma glucose adds to the initial drain, mL.</param>
internal sealed record NightBasis(NightResponse Response, NightResponse? Before, double NightCorrection, double DayCorrection)
{
    /// <summary>Ultrafiltration by the fit alone, mL.</summary>
    public double Ultrafiltration(bool holdsDay) =>
        Response.Night + NightCorrection + (holdsDay && !Response.IsByHand && Before is not null ? InitialDrain!.Value - Before.DayFill : 0);

    /// <summary>Initial drain by the fit alone, mL; null where nothing was filled.</summary>
    public double? InitialDrain => Before?.InitialDrain + DayCorrection;
}
