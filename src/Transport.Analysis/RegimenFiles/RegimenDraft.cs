using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>Makes regimens of the statements of a file, and finds everything that keeps them from being made.</summary>
internal sealed class RegimenDraft
{
    /// <summary>A day of a week without treatment.</summary>
    public const string NoTreatment = "-";

    /// <summary>In a week: the one regimen of the file, where it has no name.</summary>
    public const string OnlyRegimen = "x";

    // In place of a night whose length could not be read.
    private static readonly TimeSpan UsualNight = TimeSpan.FromHours(9);

    private static readonly string[] OfPrescription = ["fluid in all", "volume per cycle", "cycles", "tidal share", "night solution", RegimenItem.DayFill];

    private static readonly string[] OfCyclesOnly = ["spare fluid", "complete drain every", "expected ultrafiltration"];

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
            Dictionary<string, double> stated = [];
            foreach (var (item, row) in solution)
            {
                if (values.Concentration(item, row) is { } value && !stated.TryAdd(item.Name, value))
                {
                    findings.Add(Twice(row));
                }
            }

            var first = solution.First().Row;
            var isGlucoseStated = solution.Any(statement => statement.Item.Name == RegimenItem.Solution);
            if (solution.Key.Length == 0 || !isGlucoseStated)
            {
                findings.Add(new(Severity.Error, "regimen-item-missing", "A solution that is described needs a name and its glucose.")
                {
                    Row = first.Row,
                    Field = Place(first),
                    Expected = solution.Key.Length == 0 ? "its name in the column solution" : $"a row {RegimenItem.Solution} with its glucose",
                });
            }

            if (solution.Key.Length == 0)
            {
                continue;
            }

            // One that could not be read is known all the same: what is wrong with it has been said where it is described.
            solutions[solution.Key] = SolutionWords.Make(
                solution.Key,
                stated.GetValueOrDefault(RegimenItem.Solution),
                stated.TryGetValue("solution sodium", out var sodium) ? sodium : null,
                stated.Where(ion => ion.Key is not (RegimenItem.Solution or "solution sodium")).ToDictionary(ion => ion.Key["solution ".Length..], ion => ion.Value));
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
        string[] stated = [.. facts.Keys.Where(item => OfPrescription.Contains(item))];
        List<string> forms = [];
        AddForm(hands.Count > 0, "exchanges by hand");
        AddForm(night.Count + day.Count > 0, "exchanges of night and day");
        AddForm(stated.Length > 0, $"what an automated prescription states ({string.Join(", ", stated)})");
        if (forms.Count == 0)
        {
            findings.Add(places.Of(new(
                Severity.Error, "regimen-item-missing", "Nothing says what is done: exchanges, exchanges by hand, or fluid, volume and cycles.")
            { Expected = "night solution, night length and two of cycles, volume per cycle and fluid in all; or rows night exchange; or rows hand exchange" }));
        }
        else if (forms.Count > 1)
        {
            findings.Add(places.Of(new(
                Severity.Error, "regimen-forms-mixed", $"A regimen is stated in one of three ways, and here are {string.Join(" and ", forms)}.")));
        }

        // All values are read, and whatever they make is judged, also where something else keeps the regimen from being made.
        Func<(Regimen, IEnumerable<Finding>)>?[] ways =
        [
            hands.Count > 0 ? ByHand(hands, facts, settings) : null,
            night.Count + day.Count > 0 ? ByExchanges(name, night, day, facts, settings) : null,
            stated.Length > 0 ? Stated(name, facts, settings, bags) : null,
        ];
        _ = (NightLength(facts), values.ClockOf(facts, "night start"), values.ClockOf(facts, "dry from"));
        AddUnused();
        NamedRegimen? made = null;
        foreach (var make in ways.OfType<Func<(Regimen, IEnumerable<Finding>)>>())
        {
            try
            {
                var (regimen, more) = make();
                Add(regimen.Findings.Concat(stated.Length > 0 ? more : BagCheck.Of(regimen, bags)));
                made = new(name, regimen) { Bags = bags };
            }
            catch (RegimenException impossible)
            {
                Add(impossible.Findings);
            }
        }

        return findings.Skip(before).Any(IsError) || statements.Any(statement => values.IsUnread(statement.Row)) ? null : made;

        List<RegimenRow> Rows(string item) => [.. statements.Where(statement => statement.Item.Name == item).Select(statement => statement.Row)];

        void Add(IEnumerable<Finding> reasons) => findings.AddRange(reasons.Where(reason => places.Stands(reason, values.IsUnread)).Select(places.Of));

        // A statement without a regimen's name may be meant for another.
        void AddUnused()
        {
            string[] unused = forms.Count != 1 ? []
                : hands.Count > 0 ? ["night length", "night start", .. OfCyclesOnly]
                : stated.Length > 0 ? ["dry from"]
                : ["dry from", .. OfCyclesOnly];
            findings.AddRange(unused.Where(facts.ContainsKey).Select(item => facts[item].Row).Where(row => row.Regimen == name).Select(row => new Finding(
                Severity.Warning, "regimen-item-not-used", $"Beside {forms[0]} this says nothing and is left aside.")
            { Row = row.Row, Field = Place(row), Found = $"{row.Value} {row.Unit}".TrimEnd() }));
        }

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
                findings.Add(Twice(row));
            }
        }

        return facts;
    }

    private Func<(Regimen, IEnumerable<Finding>)>? ByExchanges(
        string name, List<RegimenRow> night, List<RegimenRow> day, Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenSettings settings)
    {
        var (length, start) = (NightLength(facts, neededBy: name), values.ClockOf(facts, "night start"));
        Exchange?[] atNight = [.. night.Select(ExchangeOf)], byDay = [.. day.Select(ExchangeOf)];
        var standIn = new Exchange(DialysisSolution.Glucose136, Volume.FromMilliliters(1));
        return () => (new Regimen(length ?? UsualNight, atNight.Select(one => one ?? standIn), byDay.Select(one => one ?? standIn), settings) { NightStart = start ?? new(22, 0) }, []);
    }

    private Func<(Regimen, IEnumerable<Finding>)>? ByHand(
        List<RegimenRow> hands, Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenSettings settings)
    {
        var dry = values.ClockOf(facts, "dry from");
        HandExchange?[] exchanges = [.. hands.Select(row =>
        {
            var (clock, volume, solution) = (values.Clock(row.Clock, row, "the column clock"), values.Fill(RegimenItem.Of(RegimenItem.HandExchange)!, row), SolutionOf(row));
            return clock is { } time && volume is { } fill && solution is not null ? new HandExchange(time, solution, Volume.FromMilliliters(fill)) : null;
        })];
        if (exchanges.Length < 2 && !facts.ContainsKey("dry from"))
        {
            findings.Add(new(Severity.Error, "regimen-item-missing", "One exchange by hand needs the clock time at which it is drained.") { Row = hands[0].Row, Field = Place(hands[0]), Expected = "dry from" });
            return null;
        }

        // Those that could be read are judged without the others: what leaves no time without them leaves none with them.
        var read = exchanges.OfType<HandExchange>().ToList();
        return read.Count < (dry is null ? 2 : 1) ? null : () => (Transport.Regimen.Ambulatory(read, settings, dry), []);
    }

    private Func<(Regimen, IEnumerable<Finding>)>? Stated(
        string name, Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, RegimenSettings settings, ImmutableArray<FluidBag> bags)
    {
        var (length, spare) = (NightLength(facts, neededBy: name), values.SpareOf(facts));
        var solution = Needed(name, facts, "night solution") is { } fluid ? SolutionOf(fluid.Row with { Solution = fluid.Row.Value }, fluid.Row.Solution) : null;
        DayFill? day = null;
        if (facts.TryGetValue(RegimenItem.DayFill, out var dayFill) && values.Number(dayFill.Item, dayFill.Row) is { } volume && volume != 0)
        {
            // Zero is a dry day.
            var daySolution = dayFill.Row.Solution.Length > 0 ? SolutionOf(dayFill.Row) : solution;
            day = values.Fill(dayFill.Item, dayFill.Row) is { } positive && daySolution is not null ? new(daySolution, Volume.FromMilliliters(positive)) : null;
        }

        // What is stated counts as stated, though it could not be read.
        var prescription = new AutomatedPrescription(length ?? UsualNight, solution ?? DialysisSolution.Glucose136)
        {
            FluidInAll = OrIfStated("fluid in all", values.VolumeOf(facts, "fluid in all"), Volume.FromLiters(10)),
            VolumePerCycle = OrIfStated("volume per cycle", facts.TryGetValue("volume per cycle", out var fill) && values.Fill(fill.Item, fill.Row) is { } each ? Volume.FromMilliliters(each) : null, Volume.FromLiters(2)),
            Cycles = OrIfStated("cycles", values.CountOf(facts, "cycles"), 5),
            TidalShare = OrIfStated("tidal share", values.NumberOf(facts, "tidal share"), 0.5),
            ExpectedUltrafiltration = values.VolumeOf(facts, "expected ultrafiltration") ?? default,
            CompleteDrainEvery = values.CountOf(facts, "complete drain every"),
            DayFill = day,
            Spare = spare,
            Settings = settings,
            NightStart = values.ClockOf(facts, "night start") ?? new(22, 0),
            Bags = bags,
        };
        return () =>
        {
            var regimen = prescription.ToRegimen();
            return (regimen, prescription.Findings.Except(regimen.Findings));
        };

        T? OrIfStated<T>(string item, T? value, T standIn)
            where T : struct => value ?? (facts.ContainsKey(item) ? standIn : null);
    }

    private TimeSpan? NightLength(Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string? neededBy = null)
    {
        var fact = neededBy is not null ? Needed(neededBy, facts, "night length") : facts.TryGetValue("night length", out var stated) ? stated : null;
        var length = values.Time(fact);
        if (length < TimeSpan.FromDays(1))
        {
            return length;
        }

        if (fact is { } given && length is not null)
        {
            values.Bad(given.Row, "A night is shorter than 24 h.", "less than 24 h", $"{given.Row.Value} {given.Row.Unit}".TrimEnd());
        }

        return null;
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
            findings.AddRange(rows.Skip(1).Select(another => Twice(another.Row)));
        }

        if (item.Name == RegimenItem.NightsPerWeek)
        {
            if (values.Count(item, row) is >= 1 and <= 7 and var nights)
            {
                return rows.Count > 1 ? null
                    : names.Count == 1 ? RegimenWeek.OfNights(Named(names[0])!, nights)
                    : BadWeek("Nights a week are those of one regimen; with several, state the days.");
            }

            if (!values.IsUnread(row))
            {
                values.Bad(row, "A week has 1 to 7 nights.", "1 to 7");
            }

            return null;
        }

        string[] days = row.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var unknown = days.Where(day => day != NoTreatment && Named(day) is null).Distinct().ToList();
        if (unknown.Count > 0)
        {
            BadWeek($"No regimen is called {string.Join(" or ", unknown)}.");
        }

        try
        {
            var week = new RegimenWeek(days.Select(day => day == NoTreatment ? null : Named(day) ?? Named(names[0])));
            return rows.Count == 1 && unknown.Count == 0 ? week : null;
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
        var (fill, solution) = (values.Fill(RegimenItem.Of(row.Item)!, row), SolutionOf(row));
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

    private DialysisSolution? SolutionOf(RegimenRow row, string? asWritten = null)
    {
        // The row as it stands in the file, whichever of its cells names the solution.
        var written = row with { Solution = asWritten ?? row.Solution };
        if (SolutionWords.Read(row.Solution, solutions, values.DecimalMark) is { } solution)
        {
            return values.Possible(solution, written, row.Solution);
        }

        values.Unread(written, new(Severity.Error, "regimen-solution-unknown", "This is no solution that is known. A percentage needs the word anhydrous or monohydrate, which differ by 10 %.")
        {
            Found = row.Solution.Length > 0 ? row.Solution : "nothing",
            Expected = SolutionWords.Expected,
        });
        return null;
    }

    private (RegimenItem Item, RegimenRow Row)? Needed(string regimen, Dictionary<string, (RegimenItem Item, RegimenRow Row)> facts, string item)
    {
        if (facts.TryGetValue(item, out var fact))
        {
            return fact;
        }

        findings.Add(new(Severity.Error, "regimen-item-missing", $"The {item} is missing.") { Field = Place(new(regimen, item, "", "")), Expected = $"a row {item}" });
        return null;
    }

    private static Finding Twice(RegimenRow row) => new(Severity.Error, "regimen-item-twice", "This is stated twice; keep one.")
    {
        Row = row.Row,
        Field = Place(row),
        Found = row.Value,
        Expected = "one row",
    };

    private static bool IsError(Finding finding) => finding.Severity == Severity.Error;

    internal static string Place(RegimenRow row) => $"{(row.Regimen.Length > 0 ? $"{row.Regimen}: " : "")}{row.Item}{(row.Number is { } number ? $", number {number}" : "")}";
}
