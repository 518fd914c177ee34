namespace Transport.Analysis;

/// <summary>How far data narrowed what was known before.</summary>
public static class Contraction
{
    /// <summary>The verdict by the share of the prior's spread that is left (limits 0.5 and 0.75: choices).</summary>
    /// <param name="spreadLeft">Standard deviation after over that before.</param>
    public static ParameterVerdict Of(double spreadLeft) => spreadLeft switch
    {
        <= 0.5 => ParameterVerdict.FromData,
        <= 0.75 => ParameterVerdict.FromBoth,
        _ => ParameterVerdict.FromPrior,
    };

    /// <summary>What the data do, in words that follow "the data".</summary>
    public static string Words(this ParameterVerdict verdict) => verdict switch
    {
        ParameterVerdict.FromData => "decide",
        ParameterVerdict.FromBoth => "narrow it",
        _ => "say little about it",
    };
}
