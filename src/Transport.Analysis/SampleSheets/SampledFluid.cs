namespace Transport.Analysis;

/// <summary>What was sampled.</summary>
public enum SampledFluid
{
    /// <summary>Dialysate of the test dwell.</summary>
    Dialysate,

    /// <summary>Plasma or serum.</summary>
    Plasma,

    /// <summary>The drain before the test. Read and kept; <see cref="EquilibrationTest"/> has no place for it yet.</summary>
    PrecedingDrain,
}
