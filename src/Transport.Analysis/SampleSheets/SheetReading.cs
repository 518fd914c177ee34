using System.Globalization;
using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Rows to facts and measurements. Every row is judged on its own; what belongs together is judged in <see cref="SheetChecks"/>.</summary>
internal sealed class SheetReading
{
    private readonly List<Finding> findings;
    private readonly char? decimalMark;
    private readonly Dictionary<SheetItem, (int Row, double Value)> numbers = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<SheetItem, int> factRows = new(ReferenceEqualityComparer.Instance);
    private string? code;

    private SheetReading(SheetTable table, List<Finding> findings)
    {
        this.findings = findings;
        var filled = table.Rows.Where(row => !SheetWords.IsBlank(row.Value)).ToList();
        decimalMark = DecimalMarkOf(table.Delimiter, filled);

        // Facts first: clock times of samples need the clock time of the end of inflow, wherever it stands.
        var samples = new List<(SheetRow Row, SampledFluid Fluid)>();
        foreach (var row in filled)
        {
            Sort(row, samples);
        }

        foreach (var (row, fluid) in samples)
        {
            ReadMeasurement(row, fluid);
        }
    }

    public List<SheetFact> Facts { get; } = [];

    public List<SheetMeasurement> Measurements { get; } = [];

    /// <summary>Reads all rows of a table; adds what it finds to the list.</summary>
    public static SheetDraft Of(SheetTable table, List<Finding> findings, out List<SheetFact> facts, out List<SheetMeasurement> measurements)
    {
        var reading = new SheetReading(table, findings);
        (facts, measurements) = (reading.Facts, reading.Measurements);
        return new(reading.code, reading.numbers, reading.Measurements);
    }

    private char? DecimalMarkOf(char delimiter, List<SheetRow> rows)
    {
        var shown = rows
            .Where(row => row.Section.Length == 0 || Fluid(row) is not null || Fact(row) is { Kind: SheetValueKind.Number })
            .GroupBy(row => SheetNumber.DecimalMarkShownBy(row.Value))
            .Where(group => group.Key is not null)
            .ToList();
        switch (shown)
        {
            case [var only]:
                return only.Key;
            case [_, _]:
                var rarer = shown.MinBy(group => group.Count())!.First();
                findings.Add(SampleSheetCodes.MixedDecimalMarks.Finding(
                    "Some values have a decimal point and others a decimal comma. Each was read by its own form; use one mark in the whole file.",
                    rarer.Row, "value", rarer.Value));
                return null;
            default:
                return delimiter == ',' ? '.' : null;
        }
    }

    private static SampledFluid? Fluid(SheetRow row) =>
        SheetWords.Fluids.TryGetValue(SheetWords.Normal(row.Section), out var fluid) ? fluid : null;

    private static SheetItem? Fact(SheetRow row) => SheetWords.Fact(SheetWords.Normal(row.Item));

    private void Sort(SheetRow row, List<(SheetRow Row, SampledFluid Fluid)> samples)
    {
        var section = SheetWords.Normal(row.Section);
        var isAnalyte = SheetWords.Analytes.ContainsKey(SheetWords.Normal(row.Item));
        if (Fluid(row) is { } fluid)
        {
            samples.Add((row, fluid));
        }
        else if (!SheetWords.FactSections.Contains(section) || (isAnalyte && (section is "" or "patient" || row.Time.Length > 0)))
        {
            findings.Add(SampleSheetCodes.UnknownSection.Finding(
                isAnalyte ? "It is not clear which fluid this value belongs to; write it in the section column." : "This section is not known; correct it.",
                row.Row, "section", row.Section, isAnalyte ? "dialysate, plasma or preceding drain" : "patient, test, dialysate, plasma or preceding drain"));
        }
        else if (Fact(row) is { } item)
        {
            ReadFact(row, item);
        }
        else
        {
            findings.Add(SampleSheetCodes.UnknownItem.Finding(
                "This item is not known; correct its name, or begin the row with # to leave it aside.",
                row.Row, "item", row.Item, string.Join(", ", SheetWords.Facts.Select(known => known.Name))));
        }
    }

    private void ReadFact(SheetRow row, SheetItem item)
    {
        Facts.Add(new(row.Row, item.Name, row.Value, row.Unit, row.Remark));
        if (!factRows.TryAdd(item, row.Row))
        {
            findings.Add(SampleSheetCodes.DuplicateFact.Finding(
                $"'{item.Name}' is already given in row {factRows[item]}; keep one of the two.", row.Row, item.Name));
            return;
        }

        double? value = null;
        switch (item.Kind)
        {
            case SheetValueKind.Text:
                code = row.Value;
                return;
            case SheetValueKind.Number when ReferenceEquals(item, SheetWords.Dwell) && SheetTime.Clock(row.Value) is { } duration:
                value = InRange(row, item.Name, duration, item.Quantity!.Units[0], new(item.Quantity.Units[0]), item.Range!);
                break;
            case SheetValueKind.Number:
                value = ReadQuantity(row, item.Name, item.Quantity!, item.Range!, out _);
                break;
            case SheetValueKind.Choice when item.Choices!.TryGetValue(SheetWords.Normal(row.Value), out var choice):
                value = choice;
                break;
            case SheetValueKind.Choice:
                findings.Add(SampleSheetCodes.UnknownWord.Finding(
                    $"'{item.Name}' does not take this word; use one of those expected.", row.Row, item.Name, row.Value,
                    string.Join(", ", item.Choices!.GroupBy(pair => pair.Value).Select(group => group.First().Key))));
                break;
            case SheetValueKind.Date:
                value = ReadDate(row, item.Name);
                break;
            case SheetValueKind.Clock:
                value = SheetTime.Clock(row.Value);
                if (value is null)
                {
                    findings.Add(SampleSheetCodes.NotATime.Finding("This clock time cannot be read; correct it.", row.Row, item.Name, row.Value, "a clock time such as 08:15"));
                }

                break;
        }

        if (value is { } read)
        {
            numbers[item] = (row.Row, read);
        }
    }

    private void ReadMeasurement(SheetRow row, SampledFluid fluid)
    {
        if (!SheetWords.Analytes.TryGetValue(SheetWords.Normal(row.Item), out var analyte))
        {
            findings.Add(SampleSheetCodes.UnknownItem.Finding(
                "This analyte is not known; correct its name, or begin the row with # to leave it aside.",
                row.Row, "item", row.Item, "creatinine, urea, urea nitrogen, glucose or sodium"));
            return;
        }

        var field = $"{SheetWords.Name(fluid)} {SheetWords.Name(analyte)}";
        var time = ReadTime(row, fluid, field, out var timeIsUsable);
        var canonical = ReadQuantity(row, field, SheetWords.QuantityOf(analyte), SampleSheetLimits.Measured(fluid, analyte), out var unit);
        Measurements.Add(new(row.Row, fluid, analyte, row.Value, row.Unit, row.Remark)
        {
            Time = time,
            Unit = unit?.Name,
            Value = canonical is { } value && timeIsUsable ? Concentration.FromMillimolesPerLiter(value) : null,
        });

        var urea = analyte is Analyte.Urea or Analyte.UreaNitrogen;
        var twin = Measurements.SkipLast(1).FirstOrDefault(other =>
            other.Fluid == fluid && other.Time == time && (other.Analyte == analyte || (urea && other.Analyte is Analyte.Urea or Analyte.UreaNitrogen)));
        if (twin is not null && timeIsUsable)
        {
            findings.Add(SampleSheetCodes.DuplicateMeasurement.Finding(
                $"Row {twin.Row} already gives this value for the same sample; keep one, or give two samples two times.", row.Row, field, row.Value));
        }
    }

    private TimeSpan? ReadTime(SheetRow row, SampledFluid fluid, string field, out bool usable)
    {
        usable = fluid != SampledFluid.Dialysate;
        if (row.Time.Length == 0)
        {
            if (fluid == SampledFluid.Dialysate)
            {
                findings.Add(SampleSheetCodes.MissingTime.Finding(
                    "A dialysate value needs the time of its sample.", row.Row, field, expected: "minutes of dwell, h:mm, or a clock time"));
            }

            return null;
        }

        double? endOfInflow = numbers.TryGetValue(SheetWords.EndOfInflow, out var end) ? end.Value : null;
        if (SheetTime.SinceInflow(row.Time, endOfInflow, decimalMark) is not { } minutes || Math.Abs(minutes) > 7 * 1440)
        {
            usable = false;
            findings.Add(SampleSheetCodes.NotATime.Finding(
                "This time cannot be read; correct it.", row.Row, field, row.Time,
                "minutes of dwell (120), h:mm (2:00), or a clock time where 'end of inflow' is given"));
            return null;
        }

        usable = fluid != SampledFluid.Dialysate || minutes >= 0;
        if (!usable)
        {
            findings.Add(SampleSheetCodes.TimeBeforeDwell.Finding(
                Invariant($"This sample would have been taken {-minutes:0.#} min before the end of inflow, which is time zero; correct one of the two times."),
                row.Row, field, row.Time));
        }

        return TimeSpan.FromMinutes(minutes);
    }

    private double? ReadQuantity(SheetRow row, string field, SheetQuantity quantity, PlausibleRange range, out SheetUnit? unit)
    {
        unit = FindUnit(row, field, quantity);
        if (!SheetNumber.TryRead(row.Value, decimalMark, out var number, out var ambiguous))
        {
            findings.Add(ambiguous
                ? SampleSheetCodes.AmbiguousNumber.Finding(
                    "This mark may be decimal or for thousands, and no other value settles it. Write a whole number without marks, decimals with one digit more or less.",
                    row.Row, field, row.Value)
                : SampleSheetCodes.NotANumber.Finding(
                    row.Value is ['<' or '>', ..]
                        ? "A limit of detection is not a value: leave the value blank and write the limit in the remark."
                        : "This is not a number. Write the number alone; the unit has its own column.",
                    row.Row, field, row.Value));
            return null;
        }

        if (number < 0)
        {
            findings.Add(SampleSheetCodes.NegativeValue.Finding("This value cannot be below zero; correct it.", row.Row, field, row.Value));
            return null;
        }

        return unit is null ? null : InRange(row, field, number, unit, quantity, range);
    }

    private double? InRange(SheetRow row, string field, double number, SheetUnit unit, SheetQuantity quantity, PlausibleRange range)
    {
        var value = number * unit.Factor;
        if (range.Contains(value))
        {
            return value;
        }

        var expected = $"{Short(range.Low / unit.Factor)} to {Short(range.High / unit.Factor)} {unit.Name}";
        var meant = quantity.Units.FirstOrDefault(other => other != unit && range.Contains(number * other.Factor));
        findings.Add(meant is not null
            ? SampleSheetCodes.UnitSwap.Finding(
                Invariant($"{number:G6} {unit.Name} is not possible, {number:G6} {meant.Name} is. Correct the unit or the value."),
                row.Row, field, $"{row.Value} {row.Unit}", expected)
            : SampleSheetCodes.ImpossibleValue.Finding(
                "This value is not possible; correct the value or its unit.", row.Row, field, $"{row.Value} {row.Unit}".TrimEnd(), expected));
        return null;
    }

    private static string Short(double limit) => limit.ToString(limit < 1000 ? "G3" : "0", CultureInfo.InvariantCulture);

    private SheetUnit? FindUnit(SheetRow row, string field, SheetQuantity quantity)
    {
        var normal = SheetWords.NormalUnit(row.Unit);
        var expected = string.Join(", ", quantity.Units.Select(unit => unit.Name));
        if (normal.Length == 0)
        {
            if (quantity.UnitMayBeLeftOut)
            {
                return quantity.Units[0];
            }

            findings.Add(SampleSheetCodes.MissingUnit.Finding("The unit is missing; write it in the unit column.", row.Row, field, expected: expected));
            return null;
        }

        var unit = quantity.Units.FirstOrDefault(unit => unit.IsSpelled(normal));
        if (unit is null && ReferenceEquals(quantity, SheetQuantity.Strength) && normal.StartsWith('%'))
        {
            findings.Add(SampleSheetCodes.PercentageWithoutConvention.Finding(
                SheetNumber.TryRead(row.Value, decimalMark, out var percent, out _)
                    ? Invariant($"A percentage can mean two solutions: {percent:0.##} % anhydrous is {percent * Factor("% anhydrous"):0.0} mmol/L, {percent:0.##} % monohydrate is {percent * Factor("% monohydrate"):0.0} mmol/L. Look at the bag's list of contents and write one of the two.")
                    : "A percentage can mean two solutions. Write '% anhydrous' or '% monohydrate'.",
                row.Row, field, $"{row.Value} {row.Unit}", "% anhydrous, % monohydrate or mmol/L"));
        }
        else if (unit is null && normal.All(char.IsAsciiDigit))
        {
            findings.Add(SampleSheetCodes.ExtraFields.Finding(
                "The unit is a number: a decimal comma has probably split the value. In a comma-separated file a value with a decimal comma needs quotation marks.",
                row.Row, field, $"{row.Value},{row.Unit}", expected));
        }
        else if (unit is null)
        {
            findings.Add(SampleSheetCodes.UnknownUnit.Finding("This unit is not known for this item; write one of those expected.", row.Row, field, row.Unit, expected));
        }

        return unit;

        static double Factor(string name) => SheetQuantity.Strength.Units.First(unit => unit.Name == name).Factor;
    }

    private static readonly string[] CertainDates =
        ["yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "yyyy-M-d HH:mm:ss", "d.M.yyyy", "d MMM yyyy", "d-MMM-yyyy", "d MMMM yyyy", "MMM d, yyyy", "MMMM d, yyyy"];

    private static readonly string[] DayFirst = ["d/M/yyyy", "d-M-yyyy"];

    private static readonly string[] MonthFirst = ["M/d/yyyy", "M-d-yyyy"];

    private double? ReadDate(SheetRow row, string field)
    {
        if (Parsed(CertainDates) is { } certain)
        {
            return certain.DayNumber;
        }

        var (dayFirst, monthFirst) = (Parsed(DayFirst), Parsed(MonthFirst));
        if (dayFirst is { } one && monthFirst is { } other && one != other)
        {
            findings.Add(SampleSheetCodes.AmbiguousDate.Finding(
                Invariant($"This date may be {one:yyyy-MM-dd} or {other:yyyy-MM-dd} and is left out; write year-month-day."), row.Row, field, row.Value, "such as 2025-03-11"));
            return null;
        }

        if ((dayFirst ?? monthFirst) is { } date)
        {
            return date.DayNumber;
        }

        findings.Add(SampleSheetCodes.NotADate.Finding(
            "This date cannot be read and is left out; write year-month-day.", row.Row, field, row.Value, "such as 2025-03-11"));
        return null;

        DateOnly? Parsed(string[] forms) =>
            DateOnly.TryParseExact(row.Value, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;
    }
}
