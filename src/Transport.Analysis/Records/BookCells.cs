using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>The cells of one row, each judged on its own. What a sheet's cells know of numbers and units is asked of them.</summary>
internal sealed partial class BookCells(
    int row, IReadOnlyDictionary<BookColumn, string> texts, IReadOnlyDictionary<BookColumn, string> units, char? decimalMark, List<Finding> findings)
{
    private static readonly BookColumn[] OfBody =
    [
        BookWords.Effluent, BookWords.Peritonitis, BookWords.Temperature, BookWords.BloodGlucose, BookWords.Sitting, BookWords.Standing, BookWords.Pulse, BookWords.Urine, BookWords.Weight,
    ];

    private readonly SheetCells cells = new(findings, decimalMark);

    public int Row => row;

    /// <summary>What speaks of the body, as written; words that slipped into another column are words all the same.</summary>
    public ImmutableArray<BookCell> OfTheBody =>
        [.. texts.Keys.Where(Has).Select(column => (column, Cell: new BookCell(column.Name, Text(column), IsWords(column)))).Where(one => one.Cell.IsWords || OfBody.Contains(one.column)).Select(one => one.Cell)];

    public bool Has(BookColumn column) => Text(column).Length > 0;

    public bool HasAny(params BookColumn[] columns) => columns.Any(Has);

    public string Text(BookColumn column) => texts.TryGetValue(column, out var text) && !SheetWords.IsBlank(text) ? text : "";

    public double? Number(BookColumn column) => Has(column) ? Number(column, Text(column)) : null;

    public Volume? Milliliters(BookColumn column) => Number(column) is { } value ? Volume.FromMilliliters(value) : null;

    public Mass? Kilograms(BookColumn column) => Number(column) is { } value ? Mass.FromKilograms(value) : null;

    public TimeSpan? Minutes(BookColumn column) => Number(column) is { } value ? TimeSpan.FromMinutes(value) : null;

    /// <summary>A length of time, which may also be written h:mm.</summary>
    public TimeSpan? Hours(BookColumn column) =>
        SheetTime.Clock(Text(column)) is { } clock ? TimeSpan.FromMinutes(clock) : Number(column) is { } value ? TimeSpan.FromHours(value) : null;

    public T? Choice<T>(BookColumn column)
        where T : struct, Enum
    {
        if (!Has(column))
        {
            return null;
        }

        if (column.Words!.TryGetValue(SheetWords.Normal(Text(column)), out var value))
        {
            return (T)Enum.ToObject(typeof(T), value);
        }

        findings.Add(SampleSheetCodes.UnknownWord.Finding(
            $"'{column.Name}' does not take this word; the cell is left out. Use one of those expected.", row, column.Name, Text(column),
            string.Join(", ", column.Words.GroupBy(pair => pair.Value).Select(group => group.First().Key))));
        return null;
    }

    public ImmutableArray<Volume> Volumes(BookColumn column)
    {
        if (!Has(column))
        {
            return [];
        }

        var volumes = ImmutableArray.CreateBuilder<Volume>();
        foreach (var part in Between().Split(Text(column)).Where(part => part.Length > 0))
        {
            if (Number(column, part) is not { } value)
            {
                return [];
            }

            volumes.Add(Volume.FromMilliliters(value));
        }

        return volumes.ToImmutable();
    }

    public BloodPressure? Pressure(BookColumn column)
    {
        if (!Has(column))
        {
            return null;
        }

        if (PressureForm().Match(Text(column)) is { Success: true } match
            && int.TryParse(match.Groups["s"].Value, out var systolic) && int.TryParse(match.Groups["d"].Value, out var diastolic)
            && BloodPressure.IsPossible(systolic, diastolic))
        {
            return BloodPressure.FromMillimetersOfMercury(systolic, diastolic);
        }

        findings.Add(new(Severity.Warning, "book-pressure-unreadable", "This pressure cannot be read and is left out; write upper/lower in mmHg.")
        {
            Row = row,
            Field = column.Name,
            Found = Text(column),
            Expected = "such as 128/76",
        });
        return null;
    }

    /// <summary>A date that can be read one way only.</summary>
    public DateOnly? Date(BookColumn column)
    {
        if (!Has(column))
        {
            return null;
        }

        if (SheetDate.Read(Text(column), null, out var other) is { } date && other is null && BookDates.IsOfBook(date))
        {
            return date;
        }

        findings.Add(SampleSheetCodes.NotADate.Finding(
            "This date cannot be read, day and month may be swapped, or its year is far from ours; it is left out. Write year-month-day.", row, column.Name, Text(column), "such as 2025-03-11"));
        return null;
    }

    public TimeOnly? Clock(BookColumn column)
    {
        if (!Has(column))
        {
            return null;
        }

        // A leap second ends the day, and no clock shows it.
        if (SheetTime.Clock(Text(column)) is { } minutes and < 24 * 60)
        {
            return TimeOnly.FromTimeSpan(TimeSpan.FromMinutes(minutes));
        }

        findings.Add(SampleSheetCodes.NotATime.Finding("This clock time cannot be read and is left out.", row, column.Name, Text(column), "a clock time such as 08:15"));
        return null;
    }

    /// <summary>How the fluid looked: one of the words of the column, or words that say cloudy or bloody all the same.</summary>
    public EffluentLook? Look(BookColumn column)
    {
        if (!Has(column) || column.Words!.ContainsKey(SheetWords.Normal(Text(column))))
        {
            return Choice<EffluentLook>(column);
        }

        var words = BookText.Of(new BookCell(column.Name, Text(column), true).Words).Symptoms;
        return words.Contains(Symptom.StoolInFluid) ? EffluentLook.Brown : words.Contains(Symptom.CloudyFluid) ? EffluentLook.Cloudy : words.Contains(Symptom.Blood) ? EffluentLook.Bloody : Choice<EffluentLook>(column);
    }

    /// <summary>A temperature in °C: a number in either notation, of °F where it says so or can be nothing else, or what words say of it.</summary>
    public double? Temperature(BookColumn column)
    {
        if (!Has(column))
        {
            return null;
        }

        var text = Text(column);
        if (Celsius(text) is not { } celsius)
        {
            findings.Add(SampleSheetCodes.ImpossibleValue.Finding(
                "No temperature of a body can be read here and the cell is left out; write it in °C.", row, column.Name, text, "32 to 43 °C such as 37.4; 93 to 110 °F with the letter F"));
            return null;
        }

        if (IsFahrenheitByItsSize(text) && !SheetWords.NormalUnit(units[column]).Contains('f', StringComparison.Ordinal))
        {
            findings.Add(new(Severity.Note, "book-temperature-fahrenheit", string.Create(CultureInfo.InvariantCulture, $"“{text}” is read as °F, which makes {celsius:0.0} °C; write the unit in the header."))
            {
                Row = row,
                Field = column.Name,
            });
        }

        return celsius;
    }

    /// <summary>°C of what stands in a cell for temperature: a number in either notation, or what words say. Null where it is none of a body.</summary>
    public static double? Celsius(string text) =>
        PlainTemperature().Match(WithPoint(text)) is { Success: true } plain ? BookText.Celsius(plain.Groups["number"].Value) : BookText.Of(text).TemperatureCelsius;

    // Marks of decimals that are no comma: 38·6, 38'6, 38٫6.
    private static string WithPoint(string text) => OtherMark().Replace(text, ".");

    /// <summary>Whether a temperature has no letter F and can be °F alone.</summary>
    public static bool IsFahrenheitByItsSize(string text) =>
        PlainTemperature().Match(WithPoint(text)) is { Success: true } plain && BookText.IsFahrenheit(plain.Groups["number"].Value) && plain.Groups["unit"].Value is not ['f' or 'F', ..];

    /// <summary>Whether a cell is what its column takes; words are always.</summary>
    public bool CanRead(BookColumn column)
    {
        var found = new List<Finding>();
        new BookCells(row, texts, units, decimalMark, found).Try(column);
        return !found.Exists(one => one.Severity > Severity.Note);
    }

    /// <summary>Finds what is wrong with these cells.</summary>
    public void TryAll(IEnumerable<BookColumn> columns)
    {
        foreach (var column in columns)
        {
            Try(column);
        }
    }

    private void Try(BookColumn column)
    {
        _ = column switch
        {
            _ when column == BookWords.Date => SheetDate.Read(Text(column), null, out _) is not null ? column : Refused(),
            _ when column == BookWords.Patient => MeasuredForm().IsMatch(Text(column)) ? Refused() : column,
            _ when column == BookWords.TargetDate => Date(column),
            _ when column == BookWords.Began => Clock(column),
            _ when column == BookWords.Sitting || column == BookWords.Standing => Pressure(column),
            _ when column == BookWords.Temperature => Temperature(column),
            _ when column == BookWords.CycleDrains => Volumes(column),
            _ when column == BookWords.NightLength => Hours(column),
            _ when column.Words is not null => Has(column) && !column.Words.ContainsKey(SheetWords.Normal(Text(column))) ? Refused() : column,
            _ when column.Range is not null => Number(column),
            _ when column.Quantity is not null && SheetWords.Normal(Text(column)) is not "dry" => Fluid(column),
            _ => (object)column,
        };

        object? Refused()
        {
            findings.Add(SampleSheetCodes.UnknownWord.Finding($"'{column.Name}' does not take this; the cell is left out.", row, column.Name, Text(column)));
            return null;
        }
    }

    /// <summary>A strength, "icodextrin", or bags joined by + such as "2 x 5 L 75.5 + 2.5 L 126".</summary>
    public BookFluid? Fluid(BookColumn column)
    {
        if (!Has(column))
        {
            return null;
        }

        var parts = Text(column).Split('+', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var bags = new List<BookBag>();
        foreach (var part in parts)
        {
            var bag = BagForm().Match(part);
            if (!bag.Success && parts.Length > 1)
            {
                return Unread(column);
            }

            if (SolutionOf(column, bag.Success ? bag.Groups["strength"].Value : part) is not { } solution)
            {
                return null;
            }

            if (!bag.Success)
            {
                return new(solution, []);
            }

            if (!SheetNumber.TryRead(bag.Groups["volume"].Value, decimalMark ?? '.', out var liters, out _) || !(liters > 0))
            {
                return Unread(column);
            }

            var milliliters = bag.Groups["unit"].Value is ['m' or 'M', ..] ? liters : 1000 * liters;
            var count = bag.Groups["count"].Success ? int.Parse(bag.Groups["count"].Value, CultureInfo.InvariantCulture) : 1;
            if (count == 0)
            {
                return Unread(column);
            }

            bags.Add(new(count, Volume.FromMilliliters(milliliters), solution));
        }

        return bags.Count == 0 || bags.Exists(bag => bag.Solution.Polymer is not null) && bags.Count > 1 ? Unread(column) : new(Mixed(bags), [.. bags]);
    }

    // Mean strength by volume (ideal mixing).
    private static DialysisSolution Mixed(List<BookBag> bags)
    {
        if (bags.TrueForAll(bag => bag.Solution == bags[0].Solution))
        {
            return bags[0].Solution;
        }

        var volume = bags.Sum(bag => bag.Count * bag.Volume.Milliliters);
        return DialysisSolution.OfGlucose(bags.Sum(bag => bag.Count * bag.Volume.Milliliters * bag.Solution.Glucose.MillimolesPerLiter) / volume);
    }

    private DialysisSolution? SolutionOf(BookColumn column, string text) =>
        SheetWords.Normal(text) is var word && (word.StartsWith("icodextrin", StringComparison.Ordinal) || word is "ico" or "polyglucose" or "glucose polymer")
            ? DialysisSolution.Icodextrin
            : Read(column, text, SheetQuantity.Strength, SampleSheetLimits.SolutionGlucose, needsUnit: false) is { } strength ? DialysisSolution.OfGlucose(strength) : null;

    private BookFluid? Unread(BookColumn column)
    {
        findings.Add(new(Severity.Error, "book-fluid-unreadable", "This fluid cannot be read; the night keeps no expectation.")
        {
            Row = row,
            Field = column.Name,
            Found = Text(column),
            Expected = "a strength (75.5), icodextrin, or bags joined by + (2 x 5 L 75.5 + 2.5 L 126)",
        });
        return null;
    }

    // What a column of the body does not take is read as words. In other columns only words of a complaint are: a name is none.
    private bool IsWords(BookColumn column)
    {
        var text = Text(column);
        return column == BookWords.Symptoms || column == BookWords.Remark
            || (column == BookWords.Temperature ? !PlainTemperature().IsMatch(WithPoint(text)) || Celsius(text) is null
                : column == BookWords.Effluent ? !column.Words!.ContainsKey(SheetWords.Normal(text))
                : Array.IndexOf(OfBody, column) >= 0 ? !CanRead(column)
                : column != BookWords.Patient && text.Any(char.IsLetter) && !BookText.Of(text).Symptoms.IsEmpty);
    }

    private double? Number(BookColumn column, string text) => Read(column, text, column.Quantity!, column.Range!, column.NeedsUnit);

    // The unit stands in the cell, or in the header, or is the first of its kind.
    private double? Read(BookColumn column, string text, SheetQuantity quantity, PlausibleRange range, bool needsUnit)
    {
        var match = WithUnit().Match(text);
        var (number, unit) = match.Success ? (match.Groups["number"].Value, match.Groups["unit"].Value) : (text, units[column]);

        // "3.9 mmol" beside a header in mmol/L.
        unit = quantity == SheetQuantity.Glucose && SheetWords.NormalUnit(unit) == "mmol" ? quantity.Units[0].Name : unit;
        unit = unit.Length > 0 || needsUnit ? unit : quantity.Units[0].Name;
        return cells.ReadQuantity(new(row, "", column.Name, "", number, unit, ""), column.Name, quantity, range, out _);
    }

    [GeneratedRegex(@"^(?:t|temp\.?|temperature)?[ :=]*(?<number>[0-9]{2,3}(?:[.,][0-9]{1,2})?) ?(?:°|deg(?:rees?)?)? ?(?<unit>c|f|celsius|fahrenheit|)$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PlainTemperature();

    // A decimal or a pressure as somebody can have it, or more than one cell: no code of a patient.
    [GeneratedRegex(@"^(?:[0-9]{1,3}[.,][0-9]{1,2}|[0-9]{2,3}/[0-9]{2,3}|[0-9]+;.*)$")]
    private static partial Regex MeasuredForm();

    [GeneratedRegex(@"(?<=[0-9])[·'’´٫](?=[0-9])")]
    private static partial Regex OtherMark();

    [GeneratedRegex(@"[\s;/|]+")]
    private static partial Regex Between();

    [GeneratedRegex(@"^(?<s>[0-9]{2,3})\s*[/\\-]\s*(?<d>[0-9]{2,3})(\s*mmhg)?$", RegexOptions.IgnoreCase)]
    private static partial Regex PressureForm();

    [GeneratedRegex(@"^((?<count>[0-9]{1,2})\s*[x×*]\s*)?(?<volume>[0-9]+([.,][0-9]+)?)\s*(?<unit>ml|l)\s+(of\s+|at\s+)?(?<strength>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex BagForm();

    [GeneratedRegex(@"^(?<number>[^\p{L}%°]*[0-9])\s*(?<unit>[\p{L}%°].*)$")]
    private static partial Regex WithUnit();
}
