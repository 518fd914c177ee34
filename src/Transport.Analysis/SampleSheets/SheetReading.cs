using static System.FormattableString;

namespace Transport.Analysis;

/// <summary>Rows to facts and measurements. Every row is judged on its own; what belongs together is judged in <see cref="SheetChecks"/>.</summary>
internal sealed class SheetReading
{
    private readonly List<Finding> findings;
    private readonly char? decimalMark;
    private readonly SheetCells cells;
    private readonly Dictionary<SheetItem, (int Row, double Value)> numbers = new(ReferenceEqualityComparer.Instance);
    private readonly Dictionary<(string Bag, SheetItem Item), (int Row, double Value)> bagNumbers = [];
    private readonly Dictionary<SheetItem, int> factRows = new(ReferenceEqualityComparer.Instance);
    private string? code;

    private SheetReading(SheetTable table, List<Finding> findings)
    {
        this.findings = findings;
        List<Placed> rows = [.. table.Rows.Select(Placed.Of)];
        findings.AddRange(rows.Select(TimeOfFact).OfType<Finding>());
        var filled = rows.Where(row => !SheetWords.IsBlank(row.Row.Value)).ToList();
        decimalMark = DecimalMarkOf(table.Delimiter, filled);
        cells = new(findings, decimalMark);

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
        return new(reading.code, reading.numbers, reading.bagNumbers, reading.Measurements);
    }

    private char? DecimalMarkOf(char delimiter, List<Placed> rows)
    {
        var numeric = rows.Where(row => row.Row.Section.Length == 0 || row.Fluid is not null || SheetWords.Fact(SheetWords.Normal(row.Row.Item)) is { Kind: SheetValueKind.Number });
        return SheetNumber.DecimalMarkOf(delimiter, numeric.Select(row => (row.Row.Row, row.Row.Value)), findings);
    }

    private void Sort(Placed placed, List<(SheetRow Row, SampledFluid Fluid)> samples)
    {
        var row = placed.Row;
        if (placed is { Fluid: { } of, Fact: { } own })
        {
            ReadCollected(row, of, own);
        }
        else if (placed.Fluid is { } fluid)
        {
            samples.Add((row, fluid));
        }
        else if (!placed.IsOfFacts || (placed.IsAnalyte && (SheetWords.Normal(row.Section) is "" or "patient" || row.Time.Length > 0)))
        {
            findings.Add(SampleSheetCodes.UnknownSection.Finding(
                placed.IsAnalyte ? "It is not clear which fluid this value belongs to; write it in the section column." : "This section is not known; correct it.",
                row.Row, "section", row.Section, placed.IsAnalyte ? "dialysate, plasma, preceding drain, drain 1 or urine" : "patient, test, dialysate, plasma, preceding drain, drain 1 (of a collection) or urine"));
        }
        else if (placed.Fact is { } item)
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

    // Only samples have a time. A number that slipped into its column leaves the value blank, and a row without a value is read over: so said here.
    private static Finding? TimeOfFact(Placed placed) => placed is not { Fact: { } item, IsAnalyte: false } || SheetWords.IsBlank(placed.Row.Time) ? null
        : SampleSheetCodes.TimeOfFact.Finding(
            $"'{item.Name}' takes no time, and what stands there is not read. " + (SheetWords.IsBlank(placed.Row.Value) ? "Its value is blank: if it slipped into the time column, move it." : "Clear it, or move it to where it belongs."),
            placed.Row.Row, item.Name, placed.Row.Time, "a blank time");

    private void ReadFact(SheetRow row, SheetItem item)
    {
        Facts.Add(new(row.Row, item.Name, row.Value, row.Unit, row.Remark));
        if (!factRows.TryAdd(item, row.Row))
        {
            findings.Add(SampleSheetCodes.DuplicateFact.Finding(
                $"'{item.Name}' is already given in row {factRows[item]}; keep one of the two.", row.Row, item.Name));
            return;
        }

        if (item.Kind == SheetValueKind.Text)
        {
            // Tester and laboratory stay words of the sheet; only the code goes on into a test.
            code = item == SheetWords.Code ? row.Value : code;
        }
        else if (cells.ReadFact(row, item) is { } value)
        {
            numbers[item] = (row.Row, value);
        }
    }

    private void ReadCollected(SheetRow row, SampledFluid fluid, SheetItem item)
    {
        Facts.Add(new(row.Row, item.Name, row.Value, row.Unit, row.Remark));
        var bag = BagOf(row, fluid);
        if (bagNumbers.ContainsKey((bag, item)))
        {
            findings.Add(SampleSheetCodes.DuplicateFact.Finding($"'{item.Name}' of {bag} is given twice; keep one of the two.", row.Row, item.Name));
        }
        else if (cells.ReadFact(row, item) is { } value)
        {
            bagNumbers[(bag, item)] = (row.Row, value);
        }
    }

    private static string BagOf(SheetRow row, SampledFluid fluid) =>
        fluid is SampledFluid.CollectedDrain or SampledFluid.Urine ? SheetWords.BagName(row.Section) : "";

    private void ReadMeasurement(SheetRow row, SampledFluid fluid)
    {
        if (!SheetWords.Analytes.TryGetValue(SheetWords.Normal(row.Item), out var analyte))
        {
            findings.Add(SampleSheetCodes.UnknownItem.Finding(
                "This analyte is not known; correct its name, or begin the row with # to leave it aside.",
                row.Row, "item", row.Item, "creatinine, urea, urea nitrogen, glucose, sodium, potassium, a protein or the marker"));
            return;
        }

        var field = $"{SheetWords.Name(fluid)} {SheetWords.Name(analyte)}";
        var time = ReadTime(row, fluid, field, out var timeIsUsable);
        var canonical = cells.ReadQuantity(row, field, SheetWords.QuantityOf(analyte), SampleSheetLimits.Measured(fluid, analyte), out var unit);
        var (usable, byMass, bag) = (canonical is not null && timeIsUsable, SheetWords.IsByMass(analyte), BagOf(row, fluid));
        Measurements.Add(new(row.Row, fluid, analyte, row.Value, row.Unit, row.Remark)
        {
            Bag = bag,
            Time = time,
            Unit = unit?.Name,
            Value = usable && !byMass ? Concentration.FromMillimolesPerLiter(canonical!.Value) : null,
            Mass = usable && byMass ? MassConcentration.FromGramsPerLiter(canonical!.Value) : null,
        });

        var urea = analyte is Analyte.Urea or Analyte.UreaNitrogen;
        var twin = Measurements.SkipLast(1).FirstOrDefault(other =>
            other.Fluid == fluid && other.Bag == bag && other.Time == time && (other.Analyte == analyte || (urea && other.Analyte is Analyte.Urea or Analyte.UreaNitrogen)));
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

    // A row with what its section and its item say of it.
    private sealed record Placed(SheetRow Row, SampledFluid? Fluid, SheetItem? Fact, bool IsOfFacts, bool IsAnalyte)
    {
        public static Placed Of(SheetRow row)
        {
            var isAnalyte = SheetWords.Analytes.ContainsKey(SheetWords.Normal(row.Item));
            var isOfFacts = SheetWords.FactSections.Contains(SheetWords.Normal(row.Section));
            var fluid = SheetWords.Fluid(row.Section);
            var fact = fluid is { } of ? (isAnalyte ? null : FactOfCollection(row, of)) : isOfFacts ? SheetWords.Fact(SheetWords.Normal(row.Item)) : null;
            return new(row, fluid, fact, isOfFacts, isAnalyte);
        }

        // A drain of a collection, or its urine, has facts of its own beside what was measured in it.
        private static SheetItem? FactOfCollection(SheetRow row, SampledFluid fluid)
        {
            var item = SheetWords.Normal(row.Item);
            return fluid switch
            {
                SampledFluid.CollectedDrain when item == "volume" => SheetWords.Drained,
                SampledFluid.CollectedDrain => SheetWords.DrainFacts.FirstOrDefault(known => known == SheetWords.Fact(item)),
                SampledFluid.Urine when item == "volume" || SheetWords.Fact(item) == SheetWords.Urine => SheetWords.Urine,
                _ => null,
            };
        }
    }
}
