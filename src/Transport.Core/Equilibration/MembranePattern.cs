namespace Transport;

/// <summary>Patterns of membrane dysfunction that a test can be compatible with, after the taxonomy of the 2021 guideline.</summary>
/// <remarks>
/// Morelle et al., Perit Dial Int 2021;41:352-372: that such a taxonomy is to be used was read, its parts are memory. Whether a pattern was there from
/// the start or acquired takes an earlier test, and none is a diagnosis.
/// </remarks>
public enum MembranePattern
{
    /// <summary>Fast transfer of small solutes.</summary>
    FastTransfer,

    /// <summary>Low ultrafiltration with fast transfer: early loss of the gradient.</summary>
    LowUltrafiltrationWithFastTransfer,

    /// <summary>Low osmotic conductance to glucose.</summary>
    LowOsmoticConductance,

    /// <summary>Loss of fluid by absorption or leak, or an incomplete drain.</summary>
    FluidLossOrMechanical,

    /// <summary>Small effective surface.</summary>
    SmallSurface,

    /// <summary>High loss of protein.</summary>
    ProteinLoss,
}
