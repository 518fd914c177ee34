namespace Transport.Analysis;

/// <summary>The three usual strengths of glucose; what lies between counts as the nearest.</summary>
public enum GlucoseStrength
{
    /// <summary>1.36 %, 75.5 mmol/L.</summary>
    Weak,

    /// <summary>2.27 %, 126.0 mmol/L.</summary>
    Middle,

    /// <summary>3.86 %, 214.3 mmol/L.</summary>
    Strong,
}
