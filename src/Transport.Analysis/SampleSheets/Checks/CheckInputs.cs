using static System.FormattableString;
using Limits = Transport.Analysis.SampleSheetLimits;
using Words = Transport.Analysis.SheetWords;

namespace Transport.Analysis;

/// <summary>A sheet under check: what was understood, what was written, and how findings name places and values.</summary>
internal sealed class CheckInputs(SheetDraft draft, IReadOnlyList<SheetFact> facts)
{
    public SheetDraft Draft { get; } = draft;

    /// <summary>Names of the facts that were written, understood or not.</summary>
    public HashSet<string> Written { get; } = [.. facts.Select(fact => fact.Item)];

    public string? StrengthUnit => UnitOf(Words.SolutionGlucose);

    /// <summary>Glucose of the bag, mmol/L; null without a glucose solution.</summary>
    public double? Bag { get; } = draft.Agent == OsmoticAgent.Glucose ? draft.Number(Words.SolutionGlucose) : null;

    public DialysateSample? Initial { get; } = draft.Dialysate.FirstOrDefault(sample => sample.Time.TotalMinutes <= Limits.InitialSampleMinutes);

    public bool Lacks(SheetItem item) => !Written.Contains(item.Name);

    public string? UnitOf(SheetItem item) => facts.Where(fact => fact.Item == item.Name).Select(fact => Words.NormalUnit(fact.Unit)).FirstOrDefault();

    /// <summary>As named, otherwise as the measurements show; the fact decides what is missing and what is only of another form.</summary>
    public TestForm? Form => Draft.NamedForm ?? Recognized;

    /// <summary>What the measurements show; null without a dwell.</summary>
    public TestForm? Recognized => Draft.HoldsCollection ? TestForm.Collection : Draft.Recognize();

    public bool IsOneHour => Form is TestForm.OneHour or TestForm.PairedOneHour;

    public Concentration? Corrected(DialysateSample sample) => CorrectedCreatinine.Of(Draft.Assay, sample);

    public Concentration? PlasmaCreatinine => CorrectedCreatinine.Of(Draft.Assay, Draft.Plasma);

    public List<(TimeSpan Time, Concentration Value)> Points(Func<DialysateSample, Concentration?> read) =>
        [.. Draft.Dialysate.Where(sample => read(sample) is not null).Select(sample => (sample.Time, read(sample)!.Value))];

    public int? RowAt(TimeSpan time) => Draft.Of(SampledFluid.Dialysate).FirstOrDefault(measured => measured.Time == time)?.Row;

    public static Concentration? Mean(IEnumerable<Concentration?> values) =>
        values.Average(value => value?.MillimolesPerLiter) is { } mean ? Concentration.FromMillimolesPerLiter(mean) : null;

    public static bool Near(double value, double other, double share) => Math.Abs(value / other - 1) <= share;

    public static string Field(SampledFluid fluid, Analyte analyte) => $"{Words.Name(fluid)} {Words.Name(analyte)}";

    public static string Minutes(TimeSpan time) => Invariant($"{time.TotalMinutes:0.#} min");

    public static string Text(PlausibleRange range) => Invariant($"{range.Low:0.##} to {range.High:0.##} {range.Unit}");
}
