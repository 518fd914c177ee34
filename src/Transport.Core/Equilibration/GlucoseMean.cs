namespace Transport;

/// <summary>How glucose is averaged over an hour; the choice moves an osmotic conductance by up to 28 %.</summary>
public enum GlucoseMean
{
    /// <summary>(D0 − D60) / ln(D0 / D60): exact for an exponential fall.</summary>
    Logarithmic,

    /// <summary>(D0 + D60) / 2.</summary>
    Arithmetic,

    /// <summary>D0 alone.</summary>
    Initial,
}
