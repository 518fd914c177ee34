using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What could be understood of a sheet: a test, or a collection, with holes.</summary>
internal sealed partial class SheetDraft
{
    private readonly IReadOnlyDictionary<SheetItem, (int Row, double Value)> numbers;
    private readonly IReadOnlyList<SheetMeasurement> measurements;

    private readonly IReadOnlyDictionary<(string Bag, SheetItem Item), (int Row, double Value)> bags;

    public SheetDraft(
        string? code,
        IReadOnlyDictionary<SheetItem, (int Row, double Value)> numbers,
        IReadOnlyDictionary<(string Bag, SheetItem Item), (int Row, double Value)> bags,
        IReadOnlyList<SheetMeasurement> measurements)
    {
        Code = code;
        this.numbers = numbers;
        this.bags = bags;
        this.measurements = measurements;
        Assay = new(Choice<CreatinineMethod>(SheetWords.Method) ?? CreatinineMethod.NotStated, Number(SheetWords.Factor));
        Dialysate = [.. Of(SampledFluid.Dialysate)
            .GroupBy(measured => measured.Time!.Value)
            .OrderBy(group => group.Key)
            .Select(group => Sample(group.Key, group))];
        Plasma = [.. Of(SampledFluid.Plasma)
            .GroupBy(measured => measured.Time)
            .OrderBy(group => group.Key)
            .Select(group => new PlasmaSample(group.Key)
            {
                Creatinine = Value(group, Analyte.Creatinine),
                Urea = Value(group, Analyte.Urea) ?? Value(group, Analyte.UreaNitrogen),
                Glucose = Value(group, Analyte.Glucose),
                Sodium = Value(group, Analyte.Sodium),
                Proteins = ProteinsOf(group),
            })];
    }

    public string? Code { get; }

    public CreatinineAssay Assay { get; }

    public IReadOnlyList<DialysateSample> Dialysate { get; }

    public IReadOnlyList<PlasmaSample> Plasma { get; }

    public OsmoticAgent Agent => Choice<OsmoticAgent>(SheetWords.Agent) ?? OsmoticAgent.Glucose;

    public FillBasis Basis => Choice<FillBasis>(SheetWords.Basis) ?? FillBasis.Label;

    /// <summary>The written dwell, else the clock times' one, min.</summary>
    public double? DwellMinutes => Number(SheetWords.Dwell) ?? ClockedDwellMinutes;

    /// <summary>From end of inflow to start of drain by the clock, min.</summary>
    public double? ClockedDwellMinutes =>
        Number(SheetWords.EndOfInflow) is { } from && Number(SheetWords.StartOfDrain) is { } to ? SheetTime.Elapsed(from, to) : null;

    public TestForm? NamedForm => Choice<TestForm>(SheetWords.Form);

    /// <summary>Whether the sheet is of a 24-h collection: named so, or with drains or urine of their own.</summary>
    public bool IsCollection => NamedForm is { } form ? form == TestForm.Collection : HoldsCollection;

    public bool HoldsCollection => bags.Count > 0 || measurements.Any(measured => measured.Fluid is SampledFluid.CollectedDrain or SampledFluid.Urine);

    /// <summary>What went in; a weight less that of the empty bag, 1 g as 1 mL.</summary>
    public Volume? Fill => Milliliters(SheetWords.Fill) - (Milliliters(SheetWords.FillTare) ?? default);

    public Volume? Overfill => Milliliters(SheetWords.Overfill);

    public Volume? Drained => Milliliters(SheetWords.Drained) - (Milliliters(SheetWords.DrainTare) ?? default);

    public Volume? TemporaryDrained => Milliliters(SheetWords.TemporaryDrained) - (Milliliters(SheetWords.DrainTare) ?? default);

    public DateOnly? Date(SheetItem item) => Number(item) is { } day ? DateOnly.FromDayNumber((int)day) : null;

    public double? Number(SheetItem item) => numbers.TryGetValue(item, out var found) ? found.Value : null;

    public T? Choice<T>(SheetItem item)
        where T : struct, Enum => Number(item) is { } value ? (T)Enum.ToObject(typeof(T), (int)value) : null;

    public int? RowOf(SheetItem item) => numbers.TryGetValue(item, out var found) ? found.Row : null;

    public SheetMeasurement? Row(SampledFluid fluid, Analyte analyte, TimeSpan? time = null) => Of(fluid).FirstOrDefault(measured =>
        (measured.Analyte == analyte || (analyte == Analyte.Urea && measured.Analyte == Analyte.UreaNitrogen))
        && (time is null || measured.Time == time));

    /// <summary>Measurements that were understood.</summary>
    public IEnumerable<SheetMeasurement> Of(SampledFluid fluid) => measurements.Where(measured => measured.Fluid == fluid && measured.IsUnderstood);

    /// <summary>Whether a value was written, be it understood or not: nothing is called missing that only has to be corrected.</summary>
    public bool IsWritten(SampledFluid fluid, Analyte analyte) =>
        measurements.Any(measured => measured.Fluid == fluid && measured.Analyte == analyte);

    /// <summary>Whether any measurement was written, understood or not.</summary>
    public bool IsAnyWritten => measurements.Count > 0;

    /// <summary>The form that the measurements show; null without a dwell.</summary>
    public TestForm? Recognize() =>
        DwellMinutes is { } minutes ? TestForms.Recognize(Dialysate, TemporaryDrained is { Milliliters: > 0 }, TimeSpan.FromMinutes(minutes)) : null;

    /// <summary>The same for dialysate within a stretch of the dwell, min.</summary>
    public bool IsWritten(Analyte analyte, double from, double to) => measurements.Any(measured =>
        measured.Fluid == SampledFluid.Dialysate && measured.Analyte == analyte
        && measured.Time?.TotalMinutes is { } time && time >= from && time <= to);

    /// <summary>Drains of a collection, in the order of the sheet.</summary>
    public IReadOnlyList<string> Bags =>
    [
        .. bags.Where(pair => pair.Key.Item != SheetWords.Urine).Select(pair => (pair.Value.Row, pair.Key.Bag))
            .Concat(measurements.Where(measured => measured.Fluid == SampledFluid.CollectedDrain).Select(measured => (measured.Row, measured.Bag)))
            .OrderBy(pair => pair.Row).Select(pair => pair.Bag).Distinct(),
    ];

    /// <summary>A fact of a drain, weights less the tare; that of the whole sheet where the drain has none of its own, but for what it drained.</summary>
    public double? OfBag(string bag, SheetItem item)
    {
        var value = bags.TryGetValue((bag, item), out var own) ? own.Value : item == SheetWords.Drained ? null : Number(item);
        var tare = item == SheetWords.Drained ? Number(SheetWords.DrainTare) : item == SheetWords.Fill ? Number(SheetWords.FillTare) : null;
        return value - (tare ?? 0);
    }

    private TimeSpan? Minutes(SheetItem item) => Number(item) is { } value ? TimeSpan.FromMinutes(value) : null;

    private Volume? Milliliters(SheetItem item) => Number(item) is { } value ? Volume.FromMilliliters(value) : null;

    private Clearance Clearance(SheetItem item) => Number(item) is { } value ? Transport.Clearance.FromMillilitersPerMinute(value) : default;

    private static DialysateSample Sample(TimeSpan time, IEnumerable<SheetMeasurement> rows)
    {
        var sample = rows.ToList();
        return new(time)
        {
            Creatinine = Value(sample, Analyte.Creatinine),
            Urea = Value(sample, Analyte.Urea) ?? Value(sample, Analyte.UreaNitrogen),
            Glucose = Value(sample, Analyte.Glucose),
            Sodium = Value(sample, Analyte.Sodium),
            Potassium = Value(sample, Analyte.Potassium),
            Marker = sample.Find(measured => measured.Analyte == Analyte.Marker)?.Mass,
            Proteins = ProteinsOf(sample),
        };
    }

    private static ImmutableDictionary<Protein, MassConcentration> ProteinsOf(IEnumerable<SheetMeasurement> sample) => sample
        .Where(measured => measured.Mass is not null && SheetWords.Proteins.ContainsKey(measured.Analyte))
        .DistinctBy(measured => measured.Analyte)
        .ToImmutableDictionary(measured => SheetWords.Proteins[measured.Analyte], measured => measured.Mass!.Value);

    private static Concentration? Value(IEnumerable<SheetMeasurement> sample, Analyte analyte) =>
        sample.FirstOrDefault(measured => measured.Analyte == analyte)?.Value;
}
