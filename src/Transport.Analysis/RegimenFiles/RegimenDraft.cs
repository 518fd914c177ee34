using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Makes regimens of the statements of a file, and finds everything that keeps them from being made.</summary>
internal sealed class RegimenDraft
{
    /// <summary>A day of a week without treatment.</summary>
    public const string NoTreatment = "-";

    /// <summary>In a week: the one regimen of the file, where it has no name.</summary>
    public const string OnlyRegimen = "x";

    private readonly List<Finding> findings;
    private readonly RegimenValues values;
    private readonly Dictionary<string, DialysisSolution> solutions = [];

    private RegimenDraft(List<Finding> findings, char? decimalMark)
    {
        this.findings = findings;
        values = new(findings, decimalMark);
    }

    public static RegimenFile Of(IReadOnlyList<RegimenRow> rows, char? decimalMark, List<Finding> findings)
    {
        var draft = new RegimenDraft(findings, decimalMark);
        var statements = draft.Known(rows);
        draft.Describe([.. statements.Where(IsOfSolution)]);
        List<NamedRegimen> made = [];
        var names = statements.Where(IsOfRegimen).Select(statement => statement.Row.Regimen).Where(name => name.Length > 0).Distinct().ToList();
        foreach (var name in names.Count == 0 ? [""] : names)
        {
            // Statements without a name hold for every regimen.
            if (draft.Regimen(name, [.. statements.Where(statement => IsOfRegimen(statement) && statement.Row.Regimen is var own && (own.Length == 0 || own == name))]) is { } regimen)
            {
                made.Add(regimen);
            }
        }

        return new([.. made], draft.Week(statements, names, made), [.. findings]);
    }

    private static bool IsOfSolution((RegimenItem Item, RegimenRow Row) statement) => statement.Item.Kind is RegimenValueKind.Strength or RegimenValueKind.Ion;

    private static bool IsOfRegimen((RegimenItem Item, RegimenRow Row) statement) =>
        !IsOfSolution(statement) && statement.Item.Name is not (RegimenItem.Week or RegimenItem.NightsPerWeek);

    private List<(RegimenItem Item, RegimenRow Row)> Known(IReadOnlyList<RegimenRow> rows)
    {
        List<(RegimenItem, RegimenRow)> known = [];
        foreach (var row in rows)
        {
            if (RegimenItem.Of(row.Item) is not { } item)
            {
                findings.Add(new(Severity.Warning, "regimen-item-unknown", "This item is not known and is left aside.") { Row = row.Row, Field = Place(row), Found = row.Item });
            }
            else if (row.Value.Length > 0)
            {
                known.Add((item, row));
            }
        }

        return known;
    }

    private void Describe(IReadOnlyList<(RegimenItem Item, RegimenRow Row)> statements)
    {
        foreach (var solution in statements.GroupBy(statement => statement.Row.Solution.Trim()))
        {
            var first = solution.First().Row;
            double? glucose = null, sodium = null;
            Dictionary<string, double> ions = [];
            foreach (var (item, row) in solution)
            {
                if (values.Number(item, row) is not { } value)
                {
                    continue;
                }

                if (value < 0)
                {
                    values.Bad(row, "A concentration has to be zero or more.", "a positive number");
                    continue;
                }

                if (item.Name == RegimenItem.Solution)
                {
                    glucose = value;
                }
                else if (item.Name == "solution sodium")
                {
                    sodium = value;
                }
                else
                {
                    ions[item.Name["solution ".Length..]] = value;
                }
            }

            if (solution.Key.Length == 0 || glucose is null)
            {
                findings.Add(new(Severity.Error, "regimen-item-missing", "A solution that is described needs a name and its glucose.") { Row = first.Row, Field = Place(first) });
            }
            else
            {
                solutions[solution.Key] = SolutionWords.Make(solution.Key, glucose.Value, sodium, ions);
            }
        }
    }

    private NamedRegimen? Regimen(string name, IReadOnlyList<(RegimenItem Item, RegimenRow Row)> statements)
    {
        var before = findings.Count;
        var facts = Facts(statements);
        var places = new RegimenPlaces(name, [.. statements.Select(statement => (statement.Item.Name, statement.Row))]);
        var settings = RegimenSettingsDraft.Of(facts, values);
        var (night, day, hands) = (Rows(RegimenItem.NightExchange), Rows(RegimenItem.DayExchange), Rows(RegimenItem.HandExchange));
        ImmutableArray<FluidBag> bags = [.. Rows(RegimenItem.Bag).Select(row => Bag(row, false)).Concat(Rows(RegimenItem.DayBag).Select(row => Bag(row, true))).OfType<FluidBag>()];
        string[] stated = [.. facts.Keys.Where(item => item is "fluid in all" or "volume per cycle" or "cycles" or "tidal share" or "night solution" or RegimenItem.DayFill)];
        List<string> forms = [];
        AddForm(hands.Count > 0, "exchanges by hand");
        AddForm(night.Count + day.Count > 0, "exchanges of night and day");
        AddForm(stated.Length > 0, $"what an automated prescription states ({string.Join(", ", stated)})");
        if (forms.Count == 0)
        {
            findings.Add(places.Of(new(
                Severity.Error, "regimen-item-missing", "Nothing says what is done: exchanges, exchanges by hand, or fluid, volume and cycles.")));
            return null;
        }

        if (forms.Count > 1)
        {
            findings.Add(places.Of(new(
                Severity.Error, "regimen-forms-mixed", $"A regimen is stated in one of three ways, and here are {string.Join(" and ", forms)}.")));
            return null;
        }

        // Settings that cannot be read keep a regimen from being made, and not from being judged by what does not hang on them.
        var known = settings ?? RegimenSettings.Default;
        Func<(Regimen, IEnumerable<Finding>)>? make = hands.Count > 0 ? ByHand(hands, facts, known)
            : stated.Length > 0 ? Stated(facts, known, bags)
            : ByExchanges(night, day, facts, known);
        if (make is null)
        {
            return null;
        }

        try
        {
            var (regimen, more) = make();
            Add(regimen.Findings.Concat(stated.Length > 0 ? more : BagCheck.Of(regimen, bags)));
            return findings.Skip(before).Any(IsError) ? null : new(name, regimen) { Bags = bags };
        }
        catch (RegimenException impossible)
        {
            Add(impossible.Findings);
            return null;
        }

        List<RegimenRow> Rows(string item) => [.. statements.Where(statement => statement.Item.Name == item).Select(statement => statement.Row)];

        void Add(IEnumerable<Finding> made) =>
            findings.AddRange(made.Where(finding => settings is not null || !RegimenPlaces.HangsOnSettings(finding)).Select(places.Of));

        void AddForm(bool isUsed, string words)
        {
            if (isUsed)
            {
                forms.Add(words);
            }
        }
    }

    // Every item but lists once.
    private Dictionary<string, (RegimenItem Item, RegimenRow Row)> Facts(IEnumerable<(RegimenItem Item, RegimenRow Row)> statements)
    {
        Dictionary<string, (RegimenItem, RegimenRow)> facts = [];
        foreach (var (item, row) in statements.Where(statement => !statement.Item.IsList))
        {
            if (!facts.TryAdd(item.Name, (item, row)))
            {
                findings.Add(new(Severity.Error, "regimen-item-twice", "This is stated twice; keep one.") { Row = row.Row, Field = Place(row), Found = row.Value });
            }
        }

        return facts;
    }

    private Func<(Regimen, IEnumerable<Finding>)>? ByExchanges(
        List<RegimenRow> night, List<RegimenRow> day, Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenSettings settings)
    {
        var length = values.Time(Needed(facts, "night length"));
        var start = values.ClockOf(facts, "night start");
        Exchange?[] atNight = [.. night.Select(ExchangeOf)], byDay = [.. day.Select(ExchangeOf)];
        return length is { } time && !atNight.Contains(null) && !byDay.Contains(null)
            ? () => (new Regimen(time, atNight.OfType<Exchange>(), byDay.OfType<Exchange>(), settings) { NightStart = start ?? new(22, 0) }, [])
            : null;
    }

    private Func<(Regimen, IEnumerable<Finding>)>? ByHand(
        List<RegimenRow> hands, Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenSettings settings)
    {
        var dry = values.ClockOf(facts, "dry from");
        HandExchange?[] exchanges = [.. hands.Select(row =>
        {
            var (clock, volume, solution) = (values.Clock(row.Clock, row, "clock"), values.Positive(RegimenItem.Of(RegimenItem.HandExchange)!, row), SolutionOf(row));
            return clock is { } time && volume is { } fill && solution is not null ? new HandExchange(time, solution, Volume.FromMilliliters(fill)) : null;
        })];
        if (exchanges.Length < 2 && dry is null && !exchanges.Contains(null))
        {
            findings.Add(new(Severity.Error, "regimen-item-missing", "One exchange by hand needs the clock time at which it is drained.") { Row = hands[0].Row, Field = Place(hands[0]), Expected = "dry from" });
            return null;
        }

        return exchanges.Contains(null) ? null : () => (Transport.Regimen.Ambulatory(exchanges.OfType<HandExchange>(), settings, dry), []);
    }

    private Func<(Regimen, IEnumerable<Finding>)>? Stated(
        Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenSettings settings, ImmutableArray<FluidBag> bags)
    {
        var before = findings.Count;
        var (length, spare) = (values.Time(Needed(facts, "night length")), values.SpareOf(facts));
        var solution = Needed(facts, "night solution") is { } fluid ? SolutionOf(fluid.Row with { Solution = fluid.Row.Value }) : null;
        DayFill? day = null;
        if (facts.TryGetValue(RegimenItem.DayFill, out var dayFill) && values.Number(dayFill.Item, dayFill.Row) is { } volume && volume != 0)
        {
            // Zero is a dry day.
            var daySolution = dayFill.Row.Solution.Length > 0 ? SolutionOf(dayFill.Row) : solution;
            day = volume > 0 && daySolution is not null ? new(daySolution, Volume.FromMilliliters(volume)) : null;
            if (volume < 0)
            {
                values.Bad(dayFill.Row, "A day fill is zero for a dry day, or more.", "0 mL or more");
            }
        }

        var prescription = new AutomatedPrescription(length ?? TimeSpan.FromHours(1), solution ?? DialysisSolution.Glucose136)
        {
            FluidInAll = values.VolumeOf(facts, "fluid in all"),
            VolumePerCycle = values.VolumeOf(facts, "volume per cycle"),
            Cycles = values.CountOf(facts, "cycles"),
            TidalShare = values.NumberOf(facts, "tidal share"),
            ExpectedUltrafiltration = values.VolumeOf(facts, "expected ultrafiltration") ?? default,
            CompleteDrainEvery = values.CountOf(facts, "complete drain every"),
            DayFill = day,
            Spare = spare,
            Settings = settings,
            NightStart = values.ClockOf(facts, "night start") ?? new(22, 0),
            Bags = bags,
        };

        // With a statement that cannot be read the arithmetic would find what is not there.
        return findings.Skip(before).Any(IsError) ? null : () =>
        {
            var regimen = prescription.ToRegimen();
            return (regimen, prescription.Findings.Except(regimen.Findings));
        };
    }

    // Judged too where a regimen could not be made, with another in its place: then nothing comes of it.
    private RegimenWeek? Week(IReadOnlyList<(RegimenItem Item, RegimenRow Row)> statements, List<string> names, List<NamedRegimen> made)
    {
        var rows = statements.Where(statement => statement.Item.Name is RegimenItem.Week or RegimenItem.NightsPerWeek).ToList();
        if (rows.Count == 0)
        {
            return null;
        }

        names = names.Count == 0 ? [""] : names;
        var standIn = made.Count == names.Count ? null : Transport.Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var (item, row) = rows[0];
        if (rows.Count > 1)
        {
            findings.Add(new(Severity.Error, "regimen-item-twice", "The week is stated twice; keep one.") { Row = rows[1].Row.Row, Field = Place(rows[1].Row), Found = rows[1].Row.Value });
            return null;
        }

        if (item.Name == RegimenItem.NightsPerWeek)
        {
            if (values.Count(item, row) is >= 1 and <= 7 and var nights)
            {
                return names.Count == 1
                    ? RegimenWeek.OfNights(Named(names[0])!, nights)
                    : BadWeek("Nights a week are those of one regimen; with several, state the days.");
            }

            values.Bad(row, "A week has 1 to 7 nights.", "1 to 7");
            return null;
        }

        string[] days = row.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var unknown = days.Where(day => day != NoTreatment && Named(day) is null).Distinct().ToList();
        if (unknown.Count > 0)
        {
            return BadWeek($"No regimen is called {string.Join(" or ", unknown)}.");
        }

        try
        {
            return new(days.Select(day => day == NoTreatment ? null : Named(day)));
        }
        catch (ArgumentException problem)
        {
            return BadWeek(problem.Message.Split(" (Parameter")[0]);
        }

        Regimen? Named(string name) => !names.Contains(name) && (name != OnlyRegimen || names.Count > 1) ? null
            : standIn ?? made.Find(regimen => regimen.Name == name)?.Regimen ?? made[0].Regimen;

        RegimenWeek? BadWeek(string message)
        {
            findings.Add(new(Severity.Error, "regimen-week-bad", message) { Row = row.Row, Field = Place(row), Found = row.Value, Expected = "a name or - for each of seven days, or of 14, 21, 28" });
            return null;
        }
    }

    private Exchange? ExchangeOf(RegimenRow row)
    {
        var (fill, solution) = (values.Positive(RegimenItem.Of(row.Item)!, row), SolutionOf(row));
        var (dwell, isDwell) = values.Optional(row.Dwell, row, "dwell", RegimenValueKind.Duration);
        var (drain, isDrain) = values.Optional(row.Drain, row, "drain", RegimenValueKind.Volume);
        var (more, isMore) = values.Optional(row.Expected, row, "expected", RegimenValueKind.Volume);
        if (fill is not { } volume || solution is null || !isDwell || !isDrain || !isMore)
        {
            return null;
        }

        if (drain is null && more is not null)
        {
            values.Bad(row, "Ultrafiltration is expected on top of a partial drain, and every drain without a volume is complete.", "a volume in the column drain");
            return null;
        }

        return new(solution, Volume.FromMilliliters(volume), dwell is { } minutes ? RegimenValues.Minutes(minutes) : null)
        {
            PartialDrain = drain is { } part ? new(Volume.FromMilliliters(part), Volume.FromMilliliters(more ?? 0)) : null,
        };
    }

    private FluidBag? Bag(RegimenRow row, bool isForDay) =>
        values.Positive(RegimenItem.Of(row.Item)!, row) is { } volume && SolutionOf(row) is { } solution ? new(solution, Volume.FromMilliliters(volume), isForDay) : null;

    private DialysisSolution? SolutionOf(RegimenRow row)
    {
        if (SolutionWords.Read(row.Solution, solutions, values.DecimalMark) is { } solution)
        {
            return solution;
        }

        findings.Add(new(Severity.Error, "regimen-solution-unknown", "This is no solution that is known. A percentage needs the word anhydrous or monohydrate, which differ by 10 %.")
        {
            Row = row.Row,
            Field = Place(row),
            Found = row.Solution.Length > 0 ? row.Solution : "nothing",
            Expected = SolutionWords.Expected,
        });
        return null;
    }

    private (RegimenItem Item, RegimenRow Row)? Needed(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string item)
    {
        if (facts.TryGetValue(item, out var fact))
        {
            return fact;
        }

        findings.Add(new(Severity.Error, "regimen-item-missing", $"The {item} is missing.") { Field = item, Expected = item });
        return null;
    }

    private static bool IsError(Finding finding) => finding.Severity == Severity.Error;

    internal static string Place(RegimenRow row) => row.Regimen.Length > 0 ? $"{row.Regimen}: {row.Item}" : row.Item;
}
