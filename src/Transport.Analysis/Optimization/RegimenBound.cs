using System.Globalization;

namespace Transport.Analysis;

/// <summary>A floor, a ceiling or both for a measure: as expected value, or with a probability over the ensemble.</summary>
public sealed record RegimenBound
{
    private RegimenBound(RegimenMeasure measure, double floor, double ceiling)
    {
        Measure = measure;
        Floor = floor;
        Ceiling = ceiling;
    }

    /// <summary>What.</summary>
    public RegimenMeasure Measure { get; }

    /// <summary>Least that is asked for, in the measure's unit; −∞ where nothing is.</summary>
    public double Floor { get; }

    /// <summary>Most that is allowed, in the measure's unit; ∞ where nothing limits it.</summary>
    public double Ceiling { get; }

    /// <summary>How probable it has to be that the measure lies within; null: the expected value has to.</summary>
    public double? Probability { get; private init; }

    /// <summary>Whether the probability is that of a single day and not of the mean of many.</summary>
    public bool IsOfSingleDay { get; private init; }

    /// <summary>A floor on the expected value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static RegimenBound AtLeast(RegimenMeasure measure, double floor) => new(measure, Require.Finite(floor, ""), double.PositiveInfinity);

    /// <summary>A ceiling on the expected value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite.</exception>
    public static RegimenBound AtMost(RegimenMeasure measure, double ceiling) => new(measure, double.NegativeInfinity, Require.Finite(ceiling, ""));

    /// <summary>Both on the expected value.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not finite, or the ceiling is below the floor.</exception>
    public static RegimenBound Between(RegimenMeasure measure, double floor, double ceiling) =>
        new(measure, Require.Finite(floor, ""), Require.InRange(ceiling, floor, double.MaxValue, "", nameof(ceiling)));

    /// <summary>The same with a probability that the mean of many days lies within.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1, or 0.</exception>
    public RegimenBound WithProbability(double probability) => this with { Probability = Within(probability), IsOfSingleDay = false };

    /// <summary>The same with a probability that a single day lies within. Of single days only the ultrafiltration's scatter is known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not between 0 and 1, or 0.</exception>
    /// <exception cref="InvalidOperationException">The measure is not the ultrafiltration.</exception>
    public RegimenBound WithProbabilityOfSingleDay(double probability) => Measure == RegimenMeasure.Ultrafiltration
        ? this with { Probability = Within(probability), IsOfSingleDay = true }
        : throw new InvalidOperationException($"How {Name(Measure)} scatters from day to day is not known.");

    /// <summary>"ultrafiltration at least 800 mL with a probability of 0.9 (mean of many days)".</summary>
    public override string ToString() => Range(null) + Chance;

    /// <summary>The same in a person: where the kidneys' part of a dose is not known, "weekly peritoneal Kt/V (renal clearance not stated) at least 1.7".</summary>
    /// <param name="kidneys">Whose bound it is.</param>
    public string Describe(ResidualFunction kidneys)
    {
        ArgumentNullException.ThrowIfNull(kidneys);
        return Range(kidneys) + Chance;
    }

    /// <summary>"ultrafiltration at least 800 mL"; null: of nobody in particular.</summary>
    internal string Range(ResidualFunction? kidneys) => $"{Name(Measure, kidneys)} {Limits}{(Unit(Measure) is { Length: > 0 } unit ? " " + unit : "")}";

    private string Chance => Probability is { } probability
        ? string.Create(CultureInfo.InvariantCulture, $" with a probability of {probability:0.##} ({(IsOfSingleDay ? "single day" : "mean of many days")})")
        : "";

    private string Limits => (double.IsFinite(Floor), double.IsFinite(Ceiling)) switch
    {
        (true, true) => $"{Number(Floor)} to {Number(Ceiling)}",
        (true, false) => $"at least {Number(Floor)}",
        _ => $"at most {Number(Ceiling)}",
    };

    /// <summary>The same with its limits elsewhere.</summary>
    internal RegimenBound Moved(Func<double, double> floor, Func<double, double>? ceiling = null)
    {
        var high = double.IsFinite(Ceiling) ? (ceiling ?? floor)(Ceiling) : Ceiling;
        return new(Measure, double.IsFinite(Floor) ? floor(Floor) : Floor, high) { Probability = Probability, IsOfSingleDay = IsOfSingleDay };
    }

    /// <summary>Whether a value lies within.</summary>
    internal bool Holds(double value) => value >= Floor && value <= Ceiling;

    /// <summary>How far a value lies outside; zero within.</summary>
    internal double Gap(double value) => Math.Max(0, Math.Max(Floor - value, value - Ceiling));

    internal static string Name(RegimenMeasure measure, ResidualFunction? kidneys = null) => measure switch
    {
        RegimenMeasure.UreaDose when kidneys is not null => OptionWords.Dose(kidneys),
        RegimenMeasure.CreatinineClearance when kidneys is { IsClearanceKnown: false } => $"weekly peritoneal creatinine clearance ({kidneys.Missing} not stated)",
        RegimenMeasure.Ultrafiltration => "ultrafiltration",
        RegimenMeasure.SodiumRemoved => "sodium removed",
        RegimenMeasure.UreaDose => "weekly Kt/V",
        RegimenMeasure.CreatinineClearance => "weekly creatinine clearance",
        RegimenMeasure.PhosphateClearance => "weekly phosphate clearance",
        RegimenMeasure.Beta2MicroglobulinClearance => "weekly β2-microglobulin clearance",
        RegimenMeasure.GlucoseAbsorbed => "glucose absorbed",
        RegimenMeasure.PeakVolume => "most in the cavity",
        RegimenMeasure.PeakPressure => "pressure at the fullest moment",
        RegimenMeasure.NightLength => "night",
        RegimenMeasure.FluidUsed => "fluid",
        RegimenMeasure.StrongestExchanges => "exchanges with the strongest glucose",
        RegimenMeasure.Bags => "bags",
        RegimenMeasure.FluidOpened => "fluid in opened bags",
        _ => "cycles",
    };

    internal static string Unit(RegimenMeasure measure) => measure switch
    {
        RegimenMeasure.Ultrafiltration or RegimenMeasure.PeakVolume => "mL",
        RegimenMeasure.SodiumRemoved => "mmol",
        RegimenMeasure.CreatinineClearance => "L per 1.73 m²",
        RegimenMeasure.PhosphateClearance or RegimenMeasure.Beta2MicroglobulinClearance or RegimenMeasure.FluidUsed or RegimenMeasure.FluidOpened => "L",
        RegimenMeasure.GlucoseAbsorbed => "g",
        RegimenMeasure.PeakPressure => "cmH2O",
        RegimenMeasure.NightLength => "h",
        _ => "",
    };

    private static double Within(double probability) =>
        probability > 0 && probability <= 1 ? probability : throw new ArgumentOutOfRangeException(nameof(probability), probability, "Expected more than 0, at most 1.");

    private static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
