using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>The vocabulary of a record book: columns and words with their synonyms, in normal form.</summary>
internal static partial class BookWords
{
    private static readonly SheetQuantity Count = new(new SheetUnit("", 1)) { UnitMayBeLeftOut = true };
    private static readonly SheetQuantity PerMinute = new(new SheetUnit("/min", 1, "bpm", "perminute")) { UnitMayBeLeftOut = true };
    private static readonly SheetQuantity Celsius = new(new SheetUnit("°C", 1, "c", "celsius")) { UnitMayBeLeftOut = true };
    private static readonly PlausibleRange Drain = new(0, 9000, "mL", "choice: the largest fill and a great deal of ultrafiltration");
    private static readonly PlausibleRange Ultrafiltration = new(-10000, 6000, "mL", "choice: a night that hardly drains keeps all that went in; more is hardly taken off in a day");

    public static BookColumn Date { get; } = new("date", "night", "evening", "day");
    public static BookColumn Patient { get; } = new("patient", "patient code", "code");
    public static BookColumn Weight { get; } = BookColumn.Number("weight", SheetQuantity.Weight, SampleSheetLimits.WeightKilograms, "body weight");
    public static BookColumn Weighed { get; } = BookColumn.Choice<WeighingHabit>(
        "weighed", [(WeighingHabit.Empty, ["empty", "drained", "dry"]), (WeighingHabit.Full, ["full", "filled", "with fluid"])], "weighed belly", "belly");
    public static BookColumn Target { get; } = BookColumn.Number("target weight", SheetQuantity.Weight, SampleSheetLimits.WeightKilograms, "dry weight", "target");
    public static BookColumn TargetDate { get; } = new("target date", "target weight date", "date of target", "target of");
    public static BookColumn Sitting { get; } = new("pressure sitting", "blood pressure", "pressure", "bp", "bp sitting", "sitting");
    public static BookColumn Standing { get; } = new("pressure standing", "bp standing", "standing");
    public static BookColumn Pulse { get; } = BookColumn.Number("pulse", PerMinute, new(25, 220, "/min", "choice"), "heart rate");
    public static BookColumn Temperature { get; } = BookColumn.Number("temperature", Celsius, new(32, 43, "°C", "choice"), "temp");
    public static BookColumn BloodGlucose { get; } =
        BookColumn.Number("blood glucose", SheetQuantity.Glucose, new(1, 60, "mmol/L", "choice"), "plasma glucose", "sugar") with { NeedsUnit = true };
    public static BookColumn Urine { get; } = BookColumn.Number("urine", SheetQuantity.DailyVolume, SampleSheetLimits.UrinePerDay, "urine volume");
    public static BookColumn Regimen { get; } = new("regimen", "regimen name", "programme", "program");
    public static BookColumn NightLength { get; } = BookColumn.Number("night length", SheetQuantity.Hours, new(1, 24, "h", "choice"), "time on treatment", "treatment time");
    public static BookColumn Cycles { get; } = BookColumn.Number("cycles", Count, new(1, 60, "", "choice: as regimens"), "number of cycles");
    public static BookColumn CycleVolume { get; } = BookColumn.Number("volume per cycle", SheetQuantity.Volume, SampleSheetLimits.FillMilliliters, "fill", "fill volume");
    public static BookColumn NightFluid { get; } = new("night fluid", "night bags", "bags", "strength", "night strength") { Quantity = SheetQuantity.Strength };
    public static BookColumn DayFill { get; } = BookColumn.Number("day fill", SheetQuantity.Volume, new(0, 4000, "mL", "choice"), "last fill", "day volume");
    public static BookColumn DayFluid { get; } = new("day fluid", "day bag", "day strength", "last bag") { Quantity = SheetQuantity.Strength };
    public static BookColumn AverageDwell { get; } = BookColumn.Number("average dwell", SheetQuantity.Duration, new(1, 1080, "min", "choice"), "mean dwell", "average dwell time");
    public static BookColumn LostDwell { get; } = BookColumn.Number("dwell deviation", SheetQuantity.Duration, new(-720, 900, "min", "choice: lost is positive"), "lost dwell", "dwell lost", "lost dwell time");
    public static BookColumn DrainTime { get; } = BookColumn.Number("drain time", SheetQuantity.Duration, new(1, 180, "min", "choice: of one drain"), "mean drain time", "average drain time");
    public static BookColumn CycleDrains { get; } = BookColumn.Number("cycle drains", SheetQuantity.Volume, Drain, "drains", "drained per cycle", "cycle volumes");
    public static BookColumn InitialDrain { get; } = BookColumn.Number("initial drain", SheetQuantity.Volume, Drain, "first drain", "evening drain");
    public static BookColumn TotalUltrafiltration { get; } = BookColumn.Number("uf", SheetQuantity.Volume, Ultrafiltration, "total uf", "ultrafiltration", "net uf", "total ultrafiltration");
    public static BookColumn Counts { get; } = BookColumn.Choice<UltrafiltrationCount>(
        "uf counts",
        [
            (UltrafiltrationCount.Night, ["night", "night only", "cycles", "without initial drain", "no"]),
            (UltrafiltrationCount.NightAndDay, ["night and day", "day and night", "24 h", "24h"]),
            (UltrafiltrationCount.NightAndInitialDrain, ["night and initial drain", "with initial drain", "yes"]),
        ],
        "uf includes", "uf counts initial drain", "uf includes initial drain");
    public static BookColumn HandUltrafiltration { get; } = BookColumn.Number("hand uf", SheetQuantity.Volume, Ultrafiltration, "manual uf", "day exchange uf", "uf by hand");
    public static BookColumn Effluent { get; } = BookColumn.Choice<EffluentLook>(
        "effluent",
        [
            (EffluentLook.Clear, ["clear", "ok", "normal"]),
            (EffluentLook.Fibrin, ["fibrin", "strands", "clots of fibrin", "clear fibrin"]),
            (EffluentLook.Bloody, ["bloody", "blood", "pink", "red"]),
            (EffluentLook.Cloudy, ["cloudy", "turbid", "milky", "not clear"]),
            (EffluentLook.Brown, ["brown"]),
        ],
        "appearance", "effluent appearance", "drained fluid");
    public static BookColumn Symptoms { get; } = new("symptoms", "complaints");
    public static BookColumn Peritonitis { get; } = BookColumn.Choice<Answer>("peritonitis", [(Answer.No, ["no", "none", "0"]), (Answer.Yes, ["yes", "x", "1", "found", "treated"])]);
    public static BookColumn Done { get; } = BookColumn.Choice<Answer>("treated", [(Answer.No, ["no", "skipped", "not done", "none"]), (Answer.Yes, ["yes", "done"])], "night done");
    public static BookColumn Exchange { get; } = BookColumn.Number("exchange", Count, new(1, 12, "", "choice"), "exchange number", "hand exchange");
    public static BookColumn Began { get; } = new("began", "clock time", "start");
    public static BookColumn Filled { get; } = BookColumn.Number("filled", SheetQuantity.WeighedVolume, SampleSheetLimits.FillMilliliters, "bag in", "in", "weight in");
    public static BookColumn Drained { get; } = BookColumn.Number("drained", SheetQuantity.WeighedVolume, Drain, "bag out", "out", "weight out");
    public static BookColumn Flushed { get; } = BookColumn.Number("flushed", SheetQuantity.WeighedVolume, new(0, 500, "mL", "choice"), "flush");
    public static BookColumn Remark { get; } = new("remark", "remarks", "comment", "note", "notes");

    /// <summary>The columns, in the order of a fresh book.</summary>
    public static IReadOnlyList<BookColumn> Columns { get; } =
    [
        Date, Patient, Weight, Weighed, Target, TargetDate, Sitting, Standing, Pulse, Temperature, BloodGlucose, Urine, Effluent, Symptoms, Peritonitis,
        Regimen, NightFluid, CycleVolume, Cycles, NightLength, DayFluid, DayFill, Done,
        InitialDrain, CycleDrains, TotalUltrafiltration, Counts, HandUltrafiltration, LostDwell, AverageDwell, DrainTime,
        Exchange, Began, Filled, Drained, Flushed, Remark,
    ];

    /// <summary>What the charts and means of a review are made of.</summary>
    public static IReadOnlyList<BookColumn> OfTreatment { get; } =
    [
        Weight, NightFluid, CycleVolume, Cycles, NightLength, DayFluid, DayFill, InitialDrain, CycleDrains, TotalUltrafiltration, HandUltrafiltration, LostDwell, AverageDwell, DrainTime, Filled, Drained, Flushed,
    ];

    /// <summary>Which column a header names, with the unit in its brackets; null where none.</summary>
    public static (BookColumn Column, string Unit)? Column(string header)
    {
        var normal = SheetWords.Normal(Brackets().Replace(header, ""));
        var column = Columns.FirstOrDefault(known => known.Name == normal || known.Synonyms.Contains(normal));
        return column is null ? null : (column, Brackets().Match(header) is { Success: true } match ? match.Groups["unit"].Value.Trim() : "");
    }

    /// <summary>Yes or no.</summary>
    public enum Answer
    {
        No,
        Yes,
    }

    [GeneratedRegex(@"[(\[](?<unit>[^)\]]*)[)\]]")]
    private static partial Regex Brackets();
}
