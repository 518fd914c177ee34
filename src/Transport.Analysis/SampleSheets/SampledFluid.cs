namespace Transport.Analysis;

/// <summary>What was sampled.</summary>
public enum SampledFluid
{
    /// <summary>Dialysate of the test dwell.</summary>
    Dialysate,

    /// <summary>Plasma or serum.</summary>
    Plasma,

    /// <summary>The drain before the test, from whose dilution the residual volume follows.</summary>
    PrecedingDrain,

    /// <summary>A drain of a 24-h collection, or all of them pooled.</summary>
    CollectedDrain,

    /// <summary>Urine of a 24-h collection.</summary>
    Urine,
}
