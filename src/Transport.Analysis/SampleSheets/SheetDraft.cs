namespace Transport.Analysis;

/// <summary>What could be understood of a sheet: a test with holes.</summary>
internal sealed class SheetDraft
{
    private readonly IReadOnlyDictionary<SheetItem, (int Row, double Value)> numbers;
    private readonly IReadOnlyList<SheetMeasurement> measurements;

    public SheetDraft(
        string? code, IReadOnlyDictionary<SheetItem, (int Row, double Value)> numbers, IReadOnlyList<SheetMeasurement> measurements)
    {
        Code = code;
        this.numbers = numbers;
        this.measurements = measurements;
        Assay = new(Choice<CreatinineMethod>(SheetWords.Method) ?? CreatinineMethod.NotStated, Number(SheetWords.Factor));
        Dialysate = [.. Of(SampledFluid.Dialysate)
            .GroupBy(measured => measured.Time!.Value)
            .OrderBy(group => group.Key)
            .Select(group => new DialysateSample(group.Key)
            {
                Creatinine = Value(group, Analyte.Creatinine),
                Urea = Value(group, Analyte.Urea) ?? Value(group, Analyte.UreaNitrogen),
                Glucose = Value(group, Analyte.Glucose),
                Sodium = Value(group, Analyte.Sodium),
            })];
        Plasma = [.. Of(SampledFluid.Plasma)
            .GroupBy(measured => measured.Time)
            .OrderBy(group => group.Key)
            .Select(group => new PlasmaSample(group.Key)
            {
                Creatinine = Value(group, Analyte.Creatinine),
                Urea = Value(group, Analyte.Urea) ?? Value(group, Analyte.UreaNitrogen),
                Glucose = Value(group, Analyte.Glucose),
                Sodium = Value(group, Analyte.Sodium),
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

    public Volume? Fill => Milliliters(SheetWords.Fill);

    public Volume? Overfill => Milliliters(SheetWords.Overfill);

    public Volume? Drained => Milliliters(SheetWords.Drained);

    public double? Number(SheetItem item) => numbers.TryGetValue(item, out var found) ? found.Value : null;

    public T? Choice<T>(SheetItem item)
        where T : struct, Enum => Number(item) is { } value ? (T)Enum.ToObject(typeof(T), (int)value) : null;

    public int? RowOf(SheetItem item) => numbers.TryGetValue(item, out var found) ? found.Row : null;

    public SheetMeasurement? Row(SampledFluid fluid, Analyte analyte, TimeSpan? time = null) => Of(fluid).FirstOrDefault(measured =>
        (measured.Analyte == analyte || (analyte == Analyte.Urea && measured.Analyte == Analyte.UreaNitrogen))
        && (time is null || measured.Time == time));

    /// <summary>Measurements that were understood.</summary>
    public IEnumerable<SheetMeasurement> Of(SampledFluid fluid) => measurements.Where(measured => measured.Fluid == fluid && measured.Value is not null);

    /// <summary>Whether a value was written, be it understood or not: nothing is called missing that only has to be corrected.</summary>
    public bool IsWritten(SampledFluid fluid, Analyte analyte) =>
        measurements.Any(measured => measured.Fluid == fluid && measured.Analyte == analyte);

    /// <summary>The same for dialysate within a stretch of the dwell, min.</summary>
    public bool IsWritten(Analyte analyte, double from, double to) => measurements.Any(measured =>
        measured.Fluid == SampledFluid.Dialysate && measured.Analyte == analyte
        && measured.Time?.TotalMinutes is { } time && time >= from && time <= to);

    /// <summary>The test. Only for a draft without error findings.</summary>
    public EquilibrationTest ToTest()
    {
        var patient = new Patient(
            Code ?? "",
            Choice<Sex>(SheetWords.Sex)!.Value,
            Number(SheetWords.Age)!.Value,
            Length.FromCentimeters(Number(SheetWords.Height)!.Value),
            Mass.FromKilograms(Number(SheetWords.Weight)!.Value),
            PlasmaComposition.Typical,
            new(Clearance(SheetWords.RenalUreaClearance), Clearance(SheetWords.RenalCreatinineClearance), Milliliters(SheetWords.Urine) ?? default));
        var test = new EquilibrationTest
        {
            Patient = patient,
            Date = Number(SheetWords.Date) is { } day ? DateOnly.FromDayNumber((int)day) : null,
            Solution = Solution(),
            InstilledVolume = Fill!.Value,
            FillBasis = Basis,
            Overfill = Overfill,
            DrainedVolume = Drained,
            ResidualVolume = Milliliters(SheetWords.Residual),
            Dwell = TimeSpan.FromMinutes(DwellMinutes!.Value),
            CreatinineAssay = Assay,
            Dialysate = Dialysate,
            Plasma = Plasma,
        };
        var typical = PlasmaComposition.Typical;
        return test with
        {
            Patient = patient with
            {
                Plasma = new(
                    test.PlasmaUrea ?? typical.Urea, test.CorrectedPlasmaCreatinine!.Value,
                    test.PlasmaGlucose ?? typical.Glucose, test.PlasmaSodium ?? typical.Sodium),
            },
        };
    }

    private DialysisSolution Solution()
    {
        var usual = DialysisSolution.OfGlucose(Number(SheetWords.SolutionGlucose)!.Value);
        return Number(SheetWords.SolutionSodium) is { } sodium
            ? new(usual.Name, usual.Glucose, Concentration.FromMillimolesPerLiter(sodium)) { Others = usual.Others }
            : usual;
    }

    private Volume? Milliliters(SheetItem item) => Number(item) is { } value ? Volume.FromMilliliters(value) : null;

    private Clearance Clearance(SheetItem item) => Number(item) is { } value ? Transport.Clearance.FromMillilitersPerMinute(value) : default;

    private static Concentration? Value(IEnumerable<SheetMeasurement> sample, Analyte analyte) =>
        sample.FirstOrDefault(measured => measured.Analyte == analyte)?.Value;
}
