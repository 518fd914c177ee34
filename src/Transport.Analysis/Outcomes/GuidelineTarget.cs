namespace Transport.Analysis;

/// <summary>What a guideline or a series asks of a figure, for whom, and how strongly.</summary>
/// <param name="Code">Its row in reference-data/regimen-targets.</param>
/// <param name="Measure">Which figure.</param>
/// <param name="Least">At least so much.</param>
/// <param name="Source">Who says it.</param>
/// <param name="Year">When.</param>
/// <param name="Strength">How strong a recommendation or its evidence is.</param>
/// <param name="Evidence">How it is known here.</param>
public sealed record GuidelineTarget(
    string Code, OutcomeMeasure Measure, double Least, string Source, int Year, string Strength, Evidence Evidence)
{
    /// <summary>Only for patients without urine: 100 mL a day or less.</summary>
    public bool OnlyWithoutUrine { get; init; }

    /// <summary>Only for automated treatment: a night of several cycles.</summary>
    public bool OnlyAutomated { get; init; }

    /// <summary>Coefficient of variation of one measured day, by which a figure scatters around what a regimen really returns; zero: not known.</summary>
    public double NoiseOfOneDay { get; init; }

    /// <summary>"Kt/V urea, total at least 1.7 (KDOQI, 2006)".</summary>
    public override string ToString() => FormattableString.Invariant($"{Measure.Name} at least {Least:0.##} ({Source}, {Year})");
}
