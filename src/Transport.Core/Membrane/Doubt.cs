namespace Transport;

/// <summary>The layers of doubt that a band or a probability holds.</summary>
[Flags]
public enum Doubt
{
    /// <summary>None: a point.</summary>
    None = 0,

    /// <summary>The membrane's parameters, given the test.</summary>
    Parameters = 1,

    /// <summary>How far the model itself is from published results at a glucose strength and mode.</summary>
    ModelForm = 2,

    /// <summary>How much one night differs from the next in the same person on the same regimen.</summary>
    NightToNight = 4,

    /// <summary>How differently the membrane works at night, lying, than in a test done upright.</summary>
    Posture = 8,
}
