namespace Transport;

/// <summary>Mixing of fresh fluid with what was left in the cavity: mass balance, nothing more.</summary>
public static class CavityMixing
{
    /// <summary>Residual volume from the dilution of a solute: V_in (C_after − C_fresh) / (C_before − C_after).</summary>
    /// <remarks>
    /// The error is about V_in × SD(C_after) / C_before. Transfer during instillation biases urea and creatinine upward, protein least.
    /// </remarks>
    /// <param name="entered">Volume instilled.</param>
    /// <param name="before">Concentration in the fluid drained before.</param>
    /// <param name="fresh">Concentration in fresh fluid.</param>
    /// <param name="after">Concentration right after mixing.</param>
    /// <exception cref="ArgumentOutOfRangeException">The concentrations leave no room for a residual volume: after is not between fresh and before.</exception>
    public static Volume ResidualVolume(Volume entered, Concentration before, Concentration fresh, Concentration after)
    {
        var share = (after - fresh) / (before - after);
        return entered * Require.NotNegative(share, "as residual over instilled volume; the sample after mixing must lie between the other two", nameof(after));
    }

    /// <summary>Concentration right after mixing: (V_in C_fresh + V_res C_residual) / (V_in + V_res).</summary>
    /// <param name="entered">Volume instilled.</param>
    /// <param name="fresh">Concentration in fresh fluid.</param>
    /// <param name="residual">Volume left in the cavity.</param>
    /// <param name="left">Concentration in what was left.</param>
    /// <exception cref="ArgumentOutOfRangeException">The volumes do not add up to more than zero.</exception>
    public static Concentration InitialConcentration(Volume entered, Concentration fresh, Volume residual, Concentration left)
    {
        Require.Positive((entered + residual).Milliliters, "mL", nameof(entered));
        return fresh * (entered / (entered + residual)) + left * (residual / (entered + residual));
    }
}
