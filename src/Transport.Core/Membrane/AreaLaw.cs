namespace Transport;

/// <summary>How the membrane in contact with fluid depends on the volume in the cavity. Every law is 1 at the reference volume.</summary>
public enum AreaLaw
{
    /// <summary>It does not.</summary>
    Constant,

    /// <summary>(V / Vref)^⅔ up to the volume of full contact (1400 mL per m² of body surface), constant above.</summary>
    /// <remarks>Proposed with the break in Perit Dial Int 2024, doi 10.1177/08968608241290019 (read); the break volume is a choice after Fischbach 2016.</remarks>
    TwoThirds,

    /// <summary>(1 − e^(−0.00077 V)) / (1 − e^(−0.00077 Vref)), V in mL.</summary>
    /// <remarks>Keshaviah et al., J Am Soc Nephrol 1994;4:1820 (memory; its constant agrees with the normalisation used later).</remarks>
    Exponential,
}
