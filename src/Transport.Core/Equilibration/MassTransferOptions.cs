namespace Transport;

/// <summary>The choices inside a mass transfer area coefficient. Published normal values are reproduced only with plasma water and D0.</summary>
public sealed record MassTransferOptions
{
    /// <summary>Convection weight 0.5, arithmetic mean volume, plasma water at a total protein of 65 g/L.</summary>
    public static MassTransferOptions Default { get; } = new();

    /// <summary>
    /// Share F of the dialysate concentration in the convected fluid, 0 to 1: 0 is Garred's form, 0.5 Waniewski's, 1 leaves
    /// convection out (Henderson and Nolph).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 1.</exception>
    public double ConvectionWeight { get; init => field = Require.InRange(value, 0.0, 1.0, ""); } = 0.5;

    /// <summary>How the volume is averaged.</summary>
    public MeanVolume MeanVolume { get; init; } = MeanVolume.Arithmetic;

    /// <summary>
    /// Water fraction of plasma, 0.5 to 1, by which plasma concentrations are divided; 1 leaves them as measured.
    /// 0.984 − 0.000718 × total protein in g/L (memory), here at 65 g/L.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0.5 to 1.</exception>
    public double PlasmaWaterFraction { get; init => field = Require.InRange(value, 0.5, 1.0, ""); } = 0.984 - 0.000718 * 65;
}
