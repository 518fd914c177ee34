namespace Transport;

/// <summary>Mass transfer area coefficient of a small solute from the two ends of one dwell.</summary>
/// <remarks>
/// K = (Vm/t) · ln{ (P − D0) V0^(1−F) / [ (P − Dt) Vt^(1−F) ] }: the solution of d(VD)/dt = K(P − D) + J[(1−F)P + F D] without absorption,
/// derived here; F = 1, 0.5 and 0 are the forms of Henderson and Nolph, Waniewski, and Garred. Above D/P 0.9 it explodes: dK/d(D/P)
/// is (Vm/t)/(1 − D/P).
/// </remarks>
public static class MassTransferCoefficient
{
    /// <summary>The coefficient; null where dialysate has reached or passed plasma, or did not start on one side of it.</summary>
    /// <param name="plasma">Plasma concentration as the laboratory gives it.</param>
    /// <param name="initialDialysate">Dialysate concentration right after instillation.</param>
    /// <param name="finalDialysate">Dialysate concentration at the end.</param>
    /// <param name="initialVolume">Volume in the cavity after instillation, residual volume included.</param>
    /// <param name="finalVolume">Volume in the cavity at the end.</param>
    /// <param name="dwell">Time between the two.</param>
    /// <param name="options">The choices.</param>
    /// <exception cref="ArgumentOutOfRangeException">A volume or the dwell is not positive.</exception>
    public static Clearance? Of(
        Concentration plasma,
        Concentration initialDialysate,
        Concentration finalDialysate,
        Volume initialVolume,
        Volume finalVolume,
        TimeSpan dwell,
        MassTransferOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var V0 = Require.Positive(initialVolume.Milliliters, "mL", nameof(initialVolume));
        var Vt = Require.Positive(finalVolume.Milliliters, "mL", nameof(finalVolume));
        var t = Require.Positive(dwell.TotalMinutes, "min", nameof(dwell));
        var P = plasma.MillimolesPerLiter / options.PlasmaWaterFraction;
        var gradientLeft = (P - finalDialysate.MillimolesPerLiter) / (P - initialDialysate.MillimolesPerLiter);
        if (!double.IsFinite(gradientLeft) || gradientLeft <= 0)
        {
            return null;
        }

        var growth = Math.Log(Vt / V0);
        var Vm = options.MeanVolume == MeanVolume.Logarithmic && Math.Abs(growth) > 1e-9 ? (Vt - V0) / growth : (V0 + Vt) / 2;
        return Clearance.FromMillilitersPerMinute(Vm / t * (-Math.Log(gradientLeft) - (1 - options.ConvectionWeight) * growth));
    }
}
