namespace Transport.Analysis;

/// <summary>Text to nights. What stays the same is written once: a blank cell of the regimen and of the habits means as above.</summary>
internal sealed class BookReading
{
    // A year of exchanges by hand has 1,500 rows; ten years of nights 3,650.
    private const int Rows = 20_000;

    private readonly List<Finding> findings;
    private readonly Dictionary<string, BookPlan> named = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<NightRecord> nights = [];
    private BookPlan plan = BookPlan.Nothing;
    private WeighingHabit? weighed;
    private UltrafiltrationCount? counts;
    private (Mass Weight, DateOnly? On)? target;
    private string code = "";
    private readonly Dictionary<int, BookExchange> lastByHand = [];

    private BookReading(List<Finding> findings) => this.findings = findings;

    /// <summary>The nights by date, and the code of the patient; empty where the book carries none.</summary>
    public static (IReadOnlyList<NightRecord> Nights, string Code) Of(string text, List<Finding> findings)
    {
        var delimiter = DelimitedText.DelimiterOf(text, name => BookWords.Column(name) is not null);
        var rows = DelimitedText.Records(text, delimiter, findings).Take(Rows + 2).ToList();
        if (rows.Count == 0)
        {
            findings.Add(SampleSheetCodes.FileEmpty.Finding("The file holds no table. Start from the blank book."));
            return ([], "");
        }

        var (headerRow, header) = rows[0];
        var places = DelimitedText.Places(
            headerRow, header, BookWords.Columns.Count, name => BookWords.Column(name) is { } found ? IndexOf(found.Column) : -1,
            column => BookWords.Columns[column].Name, findings);
        if (places[IndexOf(BookWords.Date)] < 0)
        {
            findings.Add(SampleSheetCodes.MissingColumn.Finding("The header has no column 'date'; add it.", headerRow, "date", string.Join(' ', header)));
            return ([], "");
        }

        if (rows.Count > Rows + 1)
        {
            findings.Add(SampleSheetCodes.TooManyRows.Finding($"The file has more than {Rows} rows; reading stopped there. One book holds one patient.", rows[^1].Row));
            rows.RemoveAt(rows.Count - 1);
        }

        if (rows.Count == 1)
        {
            findings.Add(new(Severity.Error, "book-no-nights", "Below the header there is no row; write one for each night.")
            {
                Row = headerRow + 1,
                Field = "date",
                Found = "nothing",
                Expected = "a date such as 2025-03-11",
            });
        }

        var units = BookWords.Columns.ToDictionary(column => column, column => places[IndexOf(column)] is var at and >= 0 ? BookWords.Column(header[at])!.Value.Unit : "");
        var usable = rows.Skip(1).Where(row => !DelimitedText.HasExtraFields(row.Row, row.Fields, header.Length, delimiter, findings)).ToList();
        var mark = SheetNumber.DecimalMarkOf(delimiter, Numbers(usable, places), findings);
        var reading = new BookReading(findings);
        reading.Read(usable, places, units, mark);
        reading.SetHandRegimens();
        return ([.. reading.nights.OrderBy(night => night.Date)], reading.code);
    }

    private static int IndexOf(BookColumn column) => BookWords.Columns.TakeWhile(known => known != column).Count();

    private static string Field(string[] fields, int at) => at >= 0 && at < fields.Length ? fields[at] : "";

    private static IEnumerable<(int Row, string Text)> Numbers(IEnumerable<(int Row, string[] Fields)> rows, int[] places) =>
        from row in rows
        from column in Enumerable.Range(0, places.Length)
        where BookWords.Columns[column] is { Quantity: not null, Range: not null } known && known != BookWords.CycleDrains
        select (row.Row, Field(row.Fields, places[column]));

    private void Read(List<(int Row, string[] Fields)> rows, int[] places, Dictionary<BookColumn, string> units, char? mark)
    {
        var dateAt = places[IndexOf(BookWords.Date)];
        var orders = rows.Select(row => SheetDate.OrderShownBy(Field(row.Fields, dateAt))).OfType<DateOrder>().Distinct().ToList();
        DateOrder? order = orders is [var only] ? only : null;
        var blank = rows.Where(row => SheetWords.IsBlank(Field(row.Fields, dateAt))).Select(row => row.Row).ToList();
        if (blank.Count > 0)
        {
            findings.Add(new(Severity.Error, "book-date-unreadable", blank.Count == 1
                ? "This row has no date and is left out; write year-month-day."
                : FormattableString.Invariant($"{blank.Count} rows have no date and are left out: {string.Join(", ", blank.Take(5))}{(blank.Count > 5 ? " and so on" : "")}. Write year-month-day in each."))
            {
                Row = blank[0],
                Field = "date",
                Found = "nothing",
                Expected = "such as 2025-03-11",
            });
        }

        foreach (var (row, fields) in rows.ExceptBy(blank, row => row.Row))
        {
            if (DateOf(row, Field(fields, dateAt), order) is not { } date)
            {
                continue;
            }

            var before = findings.Count;
            var texts = BookWords.Columns.Select((column, index) => (column, Text: Field(fields, places[index]))).Where(cell => cell.Text.Length > 0)
                .ToDictionary(cell => cell.column, cell => cell.Text);
            Add(date, new BookCells(row, texts, units, mark, findings));
            KeepOnePerColumn(before);
        }
    }

    // A unit that the header lacks would be found again in every row.
    private void KeepOnePerColumn(int from)
    {
        for (var i = findings.Count - 1; i >= from; i--)
        {
            var found = findings[i];
            if (found.Code is "missing-unit" or "unknown-unit" or "percentage-without-convention"
                && findings.Take(i).Any(earlier => earlier.Code == found.Code && earlier.Field == found.Field))
            {
                findings.RemoveAt(i);
            }
        }
    }

    private DateOnly? DateOf(int row, string text, DateOrder? order)
    {
        var date = SheetDate.Read(text, order, out var other);
        if (date is null || other is not null)
        {
            findings.Add(new(
                Severity.Error,
                "book-date-unreadable",
                other is { } second
                    ? FormattableString.Invariant($"This date may be {date:yyyy-MM-dd} or {second:yyyy-MM-dd}; no other date of the book settles it, and the row is left out. Write year-month-day.")
                    : "This date cannot be read and the row is left out; write year-month-day.")
            {
                Row = row,
                Field = "date",
                Found = text,
                Expected = "such as 2025-03-11",
            });
            return null;
        }

        return date;
    }

    private void Add(DateOnly date, BookCells cells)
    {
        if (!IsOfOnePatient(cells))
        {
            return;
        }

        var exchange = ExchangeOf(cells);
        if (nights.FindIndex(night => night.Date == date) is var at and >= 0)
        {
            nights[at] = WithDanger(nights[at], cells);
            if (exchange is not null && nights[at].Exchanges.All(known => known.Number != exchange.Number))
            {
                nights[at] = nights[at] with { Exchanges = nights[at].Exchanges.Add(exchange) };
                return;
            }

            findings.Add(new(
                Severity.Warning, "book-night-twice", $"This date already stands in row {nights[at].Row}; the second row is left out. Keep one, or number exchanges by hand.")
            {
                Row = cells.Row,
                Field = "date",
            });
            return;
        }

        nights.Add(NightOf(date, cells) with { Exchanges = exchange is null ? [] : [exchange] });
    }

    // A code is written once; another one further down is somebody else's night.
    private bool IsOfOnePatient(BookCells cells)
    {
        var written = cells.Text(BookWords.Patient);
        code = code.Length == 0 ? written : code;
        if (written.Length == 0 || RecordBook.IsSameCode(written, code))
        {
            return true;
        }

        findings.Add(new(Severity.Error, "book-of-two-patients", "This row carries another patient's code and is left out; one book holds one patient.")
        {
            Row = cells.Row,
            Field = "patient",
            Found = written,
            Expected = code,
        });
        return false;
    }

    // Time and fluid of an exchange are those of its number's last one where nothing is written; what was weighed is not.
    private BookExchange? ExchangeOf(BookCells cells)
    {
        if (cells.Number(BookWords.Exchange) is not { } number)
        {
            return null;
        }

        var last = lastByHand.GetValueOrDefault((int)number);
        return lastByHand[(int)number] = new(
            (int)number, cells.Milliliters(BookWords.Filled), cells.Milliliters(BookWords.Drained), cells.Milliliters(BookWords.Flushed) ?? default,
            cells.Clock(BookWords.Began) ?? last?.Began)
        {
            Fluid = (IsHandRow(cells) ? cells.Fluid(BookWords.NightFluid) : null) ?? last?.Fluid,
        };
    }

    // A fluid beside an exchange is that exchange's, unless the row plans a night as well.
    private static bool IsHandRow(BookCells cells) =>
        cells.Has(BookWords.Exchange) && !cells.HasAny(BookWords.NightLength, BookWords.Cycles, BookWords.CycleVolume);

    // Whichever row of a date it stands in: a cloudy third bag of a day is a cloudy bag, and so is one in a row that is otherwise left out.
    private static NightRecord WithDanger(NightRecord night, BookCells cells)
    {
        night = night with { Complaint = Joined(night.Complaint, cells.Text(BookWords.Symptoms)), Remark = Joined(night.Remark, cells.Text(BookWords.Remark)) };

        // Together: what one cell tells of the past another may call back.
        var text = BookText.Of(night.Words, night.Date);
        double?[] temperatures = [night.TemperatureCelsius, cells.Number(BookWords.Temperature), text.TemperatureCelsius];
        EffluentLook?[] looks = [night.Effluent, cells.Look(BookWords.Effluent)];
        return night with
        {
            Symptoms = [.. night.Symptoms.Concat(text.Symptoms).Distinct()],
            TemperatureCelsius = temperatures.Max(),
            Effluent = looks.Max(),
            HasPeritonitis = night.HasPeritonitis || cells.Choice<BookWords.Answer>(BookWords.Peritonitis) == BookWords.Answer.Yes,
        };

        static string Joined(string one, string other) => other.Length == 0 || other == one ? one : one.Length == 0 ? other : $"{one}; {other}";
    }

    private void SetHandRegimens()
    {
        var rhythm = new HandRhythm();
        for (var t = 0; t < nights.Count; t++)
        {
            if (nights[t] is { Exchanges.Length: > 1, CycleDrains.Length: 0, InitialDrain: null } day && rhythm.Of(day, findings) is { } regimen)
            {
                nights[t] = day with { Regimen = regimen, IsByHand = true };
            }
        }
    }

    // A target that changes without a date is not of the day of the old one.
    private (Mass Weight, DateOnly? On)? TargetOf(BookCells cells)
    {
        var date = cells.Date(BookWords.TargetDate);
        var weight = cells.Kilograms(BookWords.Target) ?? target?.Weight;
        return weight is { } mass ? (mass, date ?? (mass == target?.Weight ? target?.On : null)) : null;
    }

    private NightRecord NightOf(DateOnly date, BookCells cells)
    {
        weighed = cells.Choice<WeighingHabit>(BookWords.Weighed) ?? weighed;
        counts = cells.Choice<UltrafiltrationCount>(BookWords.Counts) ?? counts;
        target = TargetOf(cells);
        var name = cells.Text(BookWords.Regimen);
        plan = name.Length > 0 && named.TryGetValue(name, out var known) ? known : plan;
        plan = IsHandRow(cells) ? plan : plan.With(cells, findings);
        if (name.Length > 0)
        {
            named[name] = plan with { Name = name };
            plan = named[name];
        }

        return WithDanger(new()
        {
            Date = date,
            Row = cells.Row,
            RegimenName = plan.Name,
            Regimen = plan.Regimen,
            NightFluid = plan.NightFluid,
            DayFluid = plan.DayFluid,
            InitialDrain = cells.Milliliters(BookWords.InitialDrain),
            WrittenUltrafiltration = cells.Milliliters(BookWords.TotalUltrafiltration),
            Counts = counts,
            CycleDrains = cells.Volumes(BookWords.CycleDrains),
            AverageDwell = cells.Minutes(BookWords.AverageDwell),
            LostDwell = cells.Minutes(BookWords.LostDwell),
            DrainTime = cells.Minutes(BookWords.DrainTime),
            HandUltrafiltration = cells.Milliliters(BookWords.HandUltrafiltration),
            Weight = cells.Kilograms(BookWords.Weight),
            Weighed = weighed,
            TargetWeight = target?.Weight,
            TargetWeightOn = target?.On,
            Sitting = cells.Pressure(BookWords.Sitting),
            Standing = cells.Pressure(BookWords.Standing),
            PulsePerMinute = cells.Number(BookWords.Pulse),
            BloodGlucose = cells.Number(BookWords.BloodGlucose) is { } glucose ? Concentration.FromMillimolesPerLiter(glucose) : null,
            Urine = cells.Milliliters(BookWords.Urine),
            IsSkipped = cells.Choice<BookWords.Answer>(BookWords.Done) == BookWords.Answer.No,
        }, cells);
    }
}
