namespace Transport.Analysis;

/// <summary>Text to nights. What stays the same is written once: a blank cell of the regimen and of the habits means as above.</summary>
internal sealed class BookReading
{
    // A year of exchanges by hand has 1,500 rows; ten years of nights 3,650.
    private const int Rows = 20_000;

    // Choices: what more rows than that do is a habit; and three cells are the fewest that may be one.
    private const double MostOfSlips = 0.2;
    private const int FewestForHabit = 3;

    private readonly List<Finding> findings;
    private readonly int[] places;
    private readonly Dictionary<BookColumn, string> units;
    private readonly char? mark;
    private readonly char delimiter;
    private bool isNewestOnTop;
    private IReadOnlyList<(int Row, DateOnly Date)> trusted = [];
    private readonly Dictionary<string, BookPlan> named = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<NightRecord> nights = [];
    private readonly List<NightRecord> inDoubt = [];
    private BookPlan plan = BookPlan.Nothing;
    private WeighingHabit? weighed;
    private UltrafiltrationCount? counts;
    private (Mass Weight, DateOnly? On)? target;
    private string code = "";
    private readonly Dictionary<int, BookExchange> lastByHand = [];
    private readonly HashSet<BookColumn> habits = [];
    private HashSet<BookColumn> filledBefore = [];
    private readonly Dictionary<(BookColumn Column, string Text), bool> known = [];

    private BookReading(List<Finding> findings, int[] places, Dictionary<BookColumn, string> units, char? mark, char delimiter) =>
        (this.findings, this.places, this.units, this.mark, this.delimiter) = (findings, places, units, mark, delimiter);

    /// <summary>The nights by date, the rows in doubt in their order, the last day whose date fits, and the code of the patient; empty where the book carries none.</summary>
    public static (IReadOnlyList<NightRecord> Nights, IReadOnlyList<NightRecord> InDoubt, DateOnly? LastDay, string Code) Of(string text, List<Finding> findings)
    {
        var delimiter = DelimitedText.DelimiterOf(text, name => BookWords.Column(name) is not null);
        var lost = new List<(int Row, string Line)>();
        var rows = DelimitedText.Records(text, delimiter, findings, lost).Take(Rows + 2).ToList();
        if (rows.Count == 0)
        {
            findings.Add(SampleSheetCodes.FileEmpty.Finding("The file holds no table. Start from the blank book."));
            return ([], [], null, "");
        }

        var (headerRow, header) = rows[0];
        var places = DelimitedText.Places(
            headerRow, header, BookWords.Columns.Count, name => BookWords.Column(name) is { } found ? IndexOf(found.Column) : -1,
            column => BookWords.Columns[column].Name, findings);
        if (places[IndexOf(BookWords.Date)] < 0)
        {
            findings.Add(SampleSheetCodes.MissingColumn.Finding("The header has no column 'date'; add it.", headerRow, "date", string.Join(' ', header)));
            return ([], [], null, "");
        }

        if (rows.Count > Rows + 1)
        {
            findings.Add(SampleSheetCodes.TooManyRows.Finding($"The file has more than {Rows} rows; reading stopped there. One book holds one patient.", rows[^1].Row));
            rows.RemoveAt(rows.Count - 1);
        }

        if (rows.Count == 1 && !lost.Exists(line => line.Row > headerRow))
        {
            findings.Add(new(Severity.Error, "book-no-nights", "Below the header there is no row; write one for each night.")
            {
                Row = headerRow + 1,
                Field = "date",
                Found = "nothing",
                Expected = "a date such as 2025-03-11",
            });
        }

        BookDates.GiveCentury(rows.Skip(1), places[IndexOf(BookWords.Date)], findings);
        var units = BookWords.Columns.ToDictionary(column => column, column => places[IndexOf(column)] is var at and >= 0 ? BookWords.Column(header[at])!.Value.Unit : "");
        var wide = rows.Skip(1).Where(row => DelimitedText.HasExtraFields(row.Row, row.Fields, header.Length, delimiter, findings)).ToList();
        var usable = rows.Skip(1).Except(wide).ToList();
        var mark = SheetNumber.DecimalMarkOf(delimiter, Numbers(usable, places), findings);
        var reading = new BookReading(findings, places, units, mark, delimiter);
        var fit = new RowFit([.. header.Select((_, at) => Array.IndexOf(places, at) is var known and >= 0 ? BookWords.Columns[known] : null)], delimiter, reading.CanRead);
        reading.SetHabits(usable);
        var spoilt = reading.Lost(wide, lost.Where(line => line.Row > headerRow), fit);
        var isUsual = usable.Count(row => row.Fields.Length > header.Length) > MostOfSlips * usable.Count;
        spoilt.AddRange(usable.Select(row => reading.Shifted(row.Row, row.Fields, header.Length, fit, isUsual)).OfType<LostRow>());
        reading.Read([.. usable.ExceptBy(spoilt.Select(row => row.Row), row => row.Row)], spoilt);
        reading.PutInOrder();
        reading.SetHandRegimens();
        return ([.. reading.nights], [.. reading.inDoubt.OrderBy(night => night.Row)], reading.trusted.Select(row => (DateOnly?)row.Date).Max(), reading.code);
    }

    private static int IndexOf(BookColumn column) => BookWords.Columns.TakeWhile(known => known != column).Count();

    private static string Field(string[] fields, int at) => at >= 0 && at < fields.Length ? fields[at] : "";

    private static IEnumerable<(int Row, string Text)> Numbers(IEnumerable<(int Row, string[] Fields)> rows, int[] places) =>
        from row in rows
        from column in Enumerable.Range(0, places.Length)
        where BookWords.Columns[column] is { Quantity: not null, Range: not null } known && known != BookWords.CycleDrains
        select (row.Row, Field(row.Fields, places[column]));

    private void Read(List<(int Row, string[] Fields)> rows, List<LostRow> lost)
    {
        var dateAt = places[IndexOf(BookWords.Date)];
        var orders = rows.Select(row => SheetDate.OrderShownBy(Field(row.Fields, dateAt))).OfType<DateOrder>().Distinct().ToList();
        DateOrder? order = orders is [var only] ? only : null;
        var blank = rows.Where(row => SheetWords.IsBlank(Field(row.Fields, dateAt))).Select(row => row.Row).ToHashSet();
        if (blank.Count > 0)
        {
            findings.Add(new(Severity.Error, "book-date-unreadable", blank.Count == 1
                ? "This row has no date and is left out of the charts; write year-month-day."
                : FormattableString.Invariant($"{blank.Count} rows have no date and are left out of the charts: {string.Join(", ", blank.Order().Take(5))}{(blank.Count > 5 ? " and so on" : "")}. Write year-month-day in each."))
            {
                Row = blank.Min(),
                Field = "date",
                Found = "nothing",
                Expected = "such as 2025-03-11",
            });
        }

        var dated = rows.Where(row => !blank.Contains(row.Row)).Select(row => (row.Row, Date: DateOf(row.Row, Field(row.Fields, dateAt), order)))
            .Where(row => row.Date is not null).Select(row => (row.Row, row.Date!.Value)).ToList();
        dated = [.. dated.Concat(lost.Where(row => row.Date is not null).Select(row => (row.Row, row.Date!.Value))).OrderBy(row => row.Row)];
        isNewestOnTop = BookDates.IsNewestOnTop(dated);
        var misfits = BookDates.Misfits(dated, isNewestOnTop);
        trusted = [.. dated.Where(row => !misfits.ContainsKey(row.Row))];
        var (first, last) = (trusted.Select(row => row.Date).DefaultIfEmpty().Min(), trusted.Select(row => row.Date).DefaultIfEmpty().Max());
        code = rows.Select(row => (row.Row, Code: CodeOf(row.Row, TextsOf(row.Fields)))).Concat(lost.Select(row => (row.Row, Code: HasCode(row.Certain) ? CodeOf(row.Row, row.Certain) : "")))
            .Where(row => row.Code.Length > 0).OrderBy(row => row.Row).Select(row => row.Code).FirstOrDefault() ?? "";
        var dates = dated.ToDictionary(row => row.Row, row => row.Value);
        foreach (var (row, fields) in InTime(rows, dates))
        {
            var before = findings.Count;
            var cells = Cells(row, TextsOf(fields), findings);
            var written = Field(fields, dateAt);
            var isDated = dates.TryGetValue(row, out var date);
            if (!IsOfOnePatient(cells))
            {
                AddOfAnother(isDated && !misfits.ContainsKey(row) ? date : PlaceOf(row), cells);
            }
            else if (!isDated)
            {
                AddInDoubt(NightOf(PlaceOf(row), cells), blank.Contains(row) ? "which has no date" : $"whose date “{written}” cannot be read");
            }
            else if (!misfits.TryGetValue(row, out var misfit))
            {
                Add(date, cells);
            }
            else if (misfit.Slip is { } slip)
            {
                var rowsOf = FormattableString.Invariant($"rows {slip.FirstRow} to {slip.LastRow}");
                var seems = $"seems to be one {(slip.Years > 0 ? "behind" : "ahead")}";
                if (row == slip.FirstRow)
                {
                    findings.Add(new(Severity.Warning, "book-date-out-of-place", $"The year of {rowsOf} {seems}: with another they go on from day to day with the rows beside them. They are left out of the charts, and what they say of the body counts as of those days. Correct the year.")
                    {
                        Row = row,
                        Field = "date",
                        Found = written,
                        Expected = FormattableString.Invariant($"{misfit.Place:yyyy-MM-dd}"),
                    });
                }

                inDoubt.Add(NightOf(misfit.Place, cells) with { Doubt = $"{rowsOf}, whose year {seems}" });
            }
            else
            {
                // A day that has its row is not another's as well, and a day in doubt is neither the first of a book nor its last.
                var isOut = misfit.IsLeap || date < first || date > last || trusted.Any(known => known.Date == date);
                findings.Add(new(Severity.Warning, "book-date-out-of-place", isOut
                    ? "This date is not one of the days about its row and the row is left out of the charts. Correct the date."
                    : "This date does not fit its place between the rows before and after. Correct it, or move the row.")
                {
                    Row = row,
                    Field = "date",
                    Found = written,
                    Expected = FormattableString.Invariant($"about {PlaceOf(row):yyyy-MM-dd}"),
                });
                if (isOut)
                {
                    AddInDoubt(NightOf(misfit.Place, cells), $"whose date {written} does not fit its place");
                }
                else
                {
                    Add(date, cells);
                    AddInDoubt(BodyOf(misfit.Place, Cells(row, TextsOf(fields), [])), $"whose date {written} does not fit its place");
                }
            }

            KeepOnePerColumn(before);
        }

        foreach (var row in lost)
        {
            AddLost(row, row.Date is { } date && !misfits.ContainsKey(row.Row) ? date : PlaceOf(row.Row));
        }
    }

    // Blank means as the row before in time; rows of one date keep their order.
    private IEnumerable<(int Row, string[] Fields)> InTime(List<(int Row, string[] Fields)> rows, Dictionary<int, DateOnly> dates)
    {
        if (!isNewestOnTop)
        {
            return rows;
        }

        findings.Add(new(Severity.Note, "book-newest-on-top", "The newest row stands on top, so a blank cell of the regimen is taken to mean as in the row before in time, which stands below it.")
        {
            Row = rows[0].Row,
        });
        var days = new List<List<(int Row, string[] Fields)>>();
        DateOnly? last = null;
        foreach (var row in rows)
        {
            DateOnly? date = dates.TryGetValue(row.Row, out var written) ? written : null;
            if (days.Count == 0 || date is null || date != last)
            {
                days.Add([]);
            }

            days[^1].Add(row);
            last = date;
        }

        days.Reverse();
        return days.SelectMany(day => day);
    }

    private Dictionary<BookColumn, string> TextsOf(string[] fields) =>
        BookWords.Columns.Select((column, index) => (column, Text: Field(fields, places[index]))).Where(cell => cell.Text.Length > 0).ToDictionary(cell => cell.column, cell => cell.Text);

    private BookCells Cells(int row, IReadOnlyDictionary<BookColumn, string> texts, List<Finding> found) => new(row, texts, units, mark, found);

    // Between the nearest rows whose dates fit; a book may be kept with the newest row on top.
    private DateOnly PlaceOf(int row)
    {
        var (before, after) = (trusted.LastOrDefault(known => known.Row < row).Date, trusted.FirstOrDefault(known => known.Row > row).Date);
        return isNewestOnTop ? BookDates.PlaceOf(after, before) : BookDates.PlaceOf(before, after);
    }

    private void AddInDoubt(NightRecord night, string why) => inDoubt.Add(night with { Doubt = $"row {night.Row}, {why}" });

    private List<LostRow> Lost(List<(int Row, string[] Fields)> wide, IEnumerable<(int Row, string Line)> lines, RowFit fit) =>
    [
        .. wide.Select(row => new LostRow(row.Row, row.Fields, fit.Of(row.Fields).Certain, "has more cells than the header")),
        .. from line in lines
           where line.Line.Length > 0 && !line.Line.StartsWith('#')
           let fields = line.Line.Replace("\"", "", StringComparison.Ordinal).Split(delimiter, StringSplitOptions.TrimEntries)
           select new LostRow(line.Row, fields, fit.Of(fields).Certain, "stands in or below an open or stray quotation mark"),
    ];

    // A row that is no wider than the header, once blanks at its end are left aside, may have slipped all the same.
    private LostRow? Shifted(int row, string[] fields, int width, RowFit fit, bool isUsuallyWider)
    {
        var written = fields.Reverse().SkipWhile(field => field.Length == 0).Reverse().ToArray();
        var texts = TextsOf(written);
        var unread = texts.Keys.Where(column => !CanRead(column, texts[column])).ToList();
        var missing = unread.Count + (texts.ContainsKey(BookWords.Date) ? 0 : 1);
        var isWider = fields.Length > width && !isUsuallyWider;
        var isAsBefore = missing == 0 && filledBefore.SetEquals(texts.Keys);

        // Cells under the columns of the row before, each as its column takes it, lie where they belong: a blank one more stands at the end.
        if (missing == 0 && !isWider || isAsBefore || written.Length > width)
        {
            filledBefore = [.. texts.Keys];
            return null;
        }

        // A blank cell more than the others have shows that there is a delimiter too many, a row that ends early that there may be one too few; otherwise cells that fit beside their place.
        int[] slips = isWider ? [fields.Length - width] : missing > 1 ? [1, -1, 2, -2, 3, -3] : fields.Length < width ? [fields.Length - width] : [];
        var best = slips.Where(slip => written.Length <= width + slip).Select(slip => (Slip: slip, Fit: fit.Of([.. written, .. Enumerable.Repeat("", width + slip - written.Length)])))
            .OrderBy(one => one.Fit.Unread + (one.Slip == fields.Length - width ? 0 : Math.Abs(one.Slip))).FirstOrDefault();
        var isBetter = best.Slip != 0 && (isWider ? best.Fit.Certain.Count != texts.Count || texts.Any(cell => best.Fit.Certain.GetValueOrDefault(cell.Key) != cell.Value)
            : best.Fit.Unread + (best.Slip == fields.Length - width ? 0 : Math.Abs(best.Slip)) < missing);
        if (isBetter)
        {
            var why = $"seems to have {Math.Abs(best.Slip) switch { 1 => "a cell", 2 => "two cells", 3 => "three cells", var count => FormattableString.Invariant($"{count} cells") }} too {(best.Slip > 0 ? "many" : "few")}";
            findings.Add(SampleSheetCodes.ExtraFields.Finding(
                $"The row {why}: its cells fit the columns beside their own. It is left out of the charts. {(best.Slip > 0 && delimiter == ',' ? "A decimal comma or a comma in a remark needs quotation marks around its cell." : "Put the cells right.")}", row, found: string.Join(delimiter, written)));
            return new(row, written, best.Fit.Certain, why);
        }

        if (unread.Count < 2)
        {
            return null;
        }

        Cells(row, texts, findings).TryAll(unread);
        var names = Wording.List([.. unread.Select(column => column.Name)]);
        findings.Add(new(Severity.Warning, "book-row-doubtful", $"Several cells of this row are not what their columns take ({names}), so that it may have slipped: it is left out of the charts. Put them right, or leave them blank.")
        {
            Row = row,
            Found = string.Join(delimiter, written),
        });
        return new(row, written, texts, $"has cells that their columns do not take ({names})");
    }

    // A column that most rows fill with what it does not take is a habit of the book and shows no slip.
    private void SetHabits(List<(int Row, string[] Fields)> rows)
    {
        var cells = rows.SelectMany(row => TextsOf(row.Fields)).ToLookup(cell => cell.Key, cell => CanRead(cell.Key, cell.Value));
        habits.UnionWith(cells.Where(column => column.Count(isRead => !isRead) is var unread && unread >= FewestForHabit && 2 * unread > column.Count()).Select(column => column.Key));
    }

    private bool CanRead(BookColumn column, string text)
    {
        if (habits.Contains(column))
        {
            return true;
        }

        if (!known.TryGetValue((column, text), out var isRead))
        {
            known[(column, text)] = isRead = Cells(0, new Dictionary<BookColumn, string> { [column] = text }, []).CanRead(column);
        }

        return isRead;
    }

    // Numbers where they are certain, words wherever they stand.
    private void AddLost(LostRow lost, DateOnly date)
    {
        var certain = Cells(lost.Row, lost.Certain, []);
        var isOfAnother = HasCode(lost.Certain) && !IsOfOnePatient(certain);
        var body = BodyOf(date, certain);
        string[] written = [.. lost.Fields.Where(field => field.Length > 0)];

        // Where every cell has its column, words are read as those of a whole row. Otherwise they may be of any cell, and nothing that they say is long ago.
        if (lost.Date is null || Signs(lost.Certain.Values) != Signs(written))
        {
            var text = BookText.Of(string.Join("; ", written));

            // A number that stands alone may be of any column.
            double?[] temperatures = [body.TemperatureCelsius, .. written.Where(cell => cell.Any(char.IsLetter)).Select(cell => BookText.Of(cell).TemperatureCelsius)];
            var whole = lost.Certain.Values.SelectMany(cell => cell.Split($"{delimiter} ").Append(cell)).ToHashSet();
            body = body with
            {
                Symptoms = [.. body.Symptoms.Concat(text.Symptoms).Distinct()],
                OfAnother = [.. body.OfAnother.Concat(text.OfAnother).Distinct()],
                TemperatureCelsius = temperatures.Max(),
                Cells = [.. body.Cells, .. written.Where(cell => !whole.Contains(cell)).Select(cell => new BookCell("", cell, true))],
            };
        }

        inDoubt.Add(body with
        {
            Remark = string.Join(", ", written),
            Doubt = $"row {lost.Row}{(lost.Date is { } day ? FormattableString.Invariant($" of {day:yyyy-MM-dd}") : "")}, which {lost.Why}{(isOfAnother ? $" and carries the code “{certain.Text(BookWords.Patient)}”" : "")}",
            IsLost = true,
            IsOfAnother = isOfAnother,
        });

        static string Signs(IEnumerable<string> cells) => string.Concat(cells.SelectMany(cell => cell).Where(char.IsLetterOrDigit).Order());
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
        if (date is not { } day || other is not null || !BookDates.IsOfBook(day))
        {
            findings.Add(new(
                Severity.Error,
                "book-date-unreadable",
                other is { } second
                    ? FormattableString.Invariant($"This date may be {date:yyyy-MM-dd} or {second:yyyy-MM-dd}; no other date of the book settles it, and the row is left out of the charts. Write year-month-day.")
                    : "This date cannot be read and the row is left out of the charts; write year-month-day.")
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
        var exchange = ExchangeOf(cells);
        if (nights.FindIndex(night => night.Date == date) is var at and >= 0)
        {
            nights[at] = Merged(nights[at], BodyOf(date, cells));
            if (exchange is not null && nights[at].Exchanges.All(known => known.Number != exchange.Number))
            {
                nights[at] = nights[at] with { Exchanges = nights[at].Exchanges.Add(exchange) };
                return;
            }

            findings.Add(new(
                Severity.Warning, "book-night-twice", $"This date already stands in row {nights[at].Row}; what the second row says of the body is read, its treatment is left out. Keep one, or number exchanges by hand.")
            {
                Row = cells.Row,
                Field = "date",
            });
            return;
        }

        nights.Add(NightOf(date, cells) with { Exchanges = exchange is null ? [] : [exchange] });
    }

    // Its plan, target and habits are somebody else's too.
    private void AddOfAnother(DateOnly date, BookCells cells)
    {
        var written = cells.Text(BookWords.Patient);
        var body = BodyOf(date, cells);
        inDoubt.Add(WithWords(body with { Cells = body.Cells.Add(new(BookWords.Patient.Name, written, true)) }) with
        {
            IsLost = true,
            IsOfAnother = true,
            Doubt = FormattableString.Invariant($"row {cells.Row}{(date == default ? "" : FormattableString.Invariant($" of {date:yyyy-MM-dd}"))}, which carries the code “{written}”"),
        });
    }

    private string CodeOf(int row, IReadOnlyDictionary<BookColumn, string> texts) => Cells(row, texts, []).Text(BookWords.Patient);

    // A decimal or a pressure that came to lie there is none.
    private bool HasCode(IReadOnlyDictionary<BookColumn, string> texts) => texts.TryGetValue(BookWords.Patient, out var code) && CanRead(BookWords.Patient, code);

    // A code is written once; another one further down is somebody else's night.
    private bool IsOfOnePatient(BookCells cells)
    {
        var written = cells.Text(BookWords.Patient);
        if (written.Length == 0 || RecordBook.IsSameCode(written, code))
        {
            return true;
        }

        findings.Add(new(Severity.Error, "book-of-two-patients", "This row carries another patient's code and is left out of the charts; one book holds one patient.")
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

    // What a row says of the body. A cell that its column does not take may say it in words.
    private static NightRecord BodyOf(DateOnly date, BookCells cells)
    {
        var night = new NightRecord
        {
            Date = date,
            Row = cells.Row,
            Weight = cells.Kilograms(BookWords.Weight),
            Sitting = cells.Pressure(BookWords.Sitting),
            Standing = cells.Pressure(BookWords.Standing),
            PulsePerMinute = cells.Number(BookWords.Pulse),
            BloodGlucose = cells.Number(BookWords.BloodGlucose) is { } glucose ? Concentration.FromMillimolesPerLiter(glucose) : null,
            Urine = cells.Milliliters(BookWords.Urine),
            TemperatureCelsius = cells.Temperature(BookWords.Temperature),
            Effluent = cells.Look(BookWords.Effluent),
            HasPeritonitis = cells.Choice<BookWords.Answer>(BookWords.Peritonitis) == BookWords.Answer.Yes,
            Complaint = cells.Text(BookWords.Symptoms),
            Remark = cells.Text(BookWords.Remark),
            Cells = cells.OfTheBody,
        };
        return WithWords(night);
    }

    // Together: what one cell tells of the past another may call back.
    private static NightRecord WithWords(NightRecord night)
    {
        var text = BookText.Of(night.Words, night.Day);
        double?[] temperatures = [night.TemperatureCelsius, text.TemperatureCelsius];
        return night with { Symptoms = [.. night.Symptoms.Concat(text.Symptoms).Distinct()], OfAnother = text.OfAnother, TemperatureCelsius = temperatures.Max() };
    }

    // Whichever row of a date it stands in: a cloudy third bag of a day is a cloudy bag, and so is one in a row that is otherwise left out.
    private static NightRecord Merged(NightRecord night, NightRecord row)
    {
        double?[] temperatures = [night.TemperatureCelsius, row.TemperatureCelsius];
        EffluentLook?[] looks = [night.Effluent, row.Effluent];
        return WithWords(night with
        {
            Complaint = Joined(night.Complaint, row.Complaint),
            Remark = Joined(night.Remark, row.Remark),
            Weight = night.Weight ?? row.Weight,
            Sitting = night.Sitting ?? row.Sitting,
            Standing = night.Standing ?? row.Standing,
            PulsePerMinute = night.PulsePerMinute ?? row.PulsePerMinute,
            BloodGlucose = night.BloodGlucose ?? row.BloodGlucose,
            Urine = night.Urine ?? row.Urine,
            TemperatureCelsius = temperatures.Max(),
            Effluent = looks.Max(),
            HasPeritonitis = night.HasPeritonitis || row.HasPeritonitis,
            Symptoms = [.. night.Symptoms.Concat(row.Symptoms).Distinct()],
            Cells = [.. night.Cells.Concat(row.Cells).Distinct()],
            OtherRows = night.OtherRows.Add(row with
            {
                Sitting = night.Sitting is null ? null : row.Sitting,
                Standing = night.Standing is null ? null : row.Standing,
                BloodGlucose = night.BloodGlucose is null ? null : row.BloodGlucose,
            }),
        });

        static string Joined(string one, string other) => other.Length == 0 || other == one ? one : one.Length == 0 ? other : $"{one}; {other}";
    }

    private void PutInOrder()
    {
        List<NightRecord> ordered = [.. BookUnits.SetAside(nights.OrderBy(night => night.Date), findings)];
        nights.Clear();
        nights.AddRange(ordered);
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

        return BodyOf(date, cells) with
        {
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
            Weighed = weighed,
            TargetWeight = target?.Weight,
            TargetWeightOn = target?.On,
            IsSkipped = cells.Choice<BookWords.Answer>(BookWords.Done) == BookWords.Answer.No,
        };
    }
}
