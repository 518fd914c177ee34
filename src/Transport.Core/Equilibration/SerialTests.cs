using static System.FormattableString;

namespace Transport;

/// <summary>The tests of one person over time.</summary>
public sealed record SerialTests
{
    private const string Within = "variation within a person (memory of low confidence, and choice)";

    // D/P may be compared across strengths of glucose. The rest only among tests of the last one's strength.
    private static readonly (bool AnyStrength, Func<EquilibrationIndices, IndexValue?> Read)[] Followed =
    [
        (true, indices => indices.IsFourHourSample ? indices.DialysateToPlasmaCreatinine : null),
        (true, indices => indices.IsFourHourSample ? indices.DialysateToPlasmaUrea : null),
        (false, indices => indices.IsFourHourSample && !indices.IsInitialGlucoseEstimated ? indices.DialysateToInitialGlucose : null),
        (false, indices => indices.NetUltrafiltration),
        (false, indices => indices.SodiumDip),
        (false, indices => indices.CorrectedSodiumDip),
        (false, indices => indices.FirstHour?.FreeWater),
        (true, indices => indices.CreatinineMassTransfer),
        (false, indices => indices.Marker?.LossFlow),
    ];

    /// <summary>The choices made.</summary>
    public required SerialTestsOptions Options { get; init; }

    /// <summary>The tests that have a date, oldest first.</summary>
    public required IReadOnlyList<EquilibrationIndices> Tests { get; init; }

    /// <summary>Indices that two comparable tests or more have.</summary>
    public required IReadOnlyList<SerialIndex> Courses { get; init; }

    /// <summary>What changed beyond chance, and what to read with care.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Follows a person, with the choices as they ship.</summary>
    public static SerialTests Of(IReadOnlyList<EquilibrationIndices> tests) => Of(tests, SerialTestsOptions.Default);

    /// <summary>Follows a person over tests in any order.</summary>
    public static SerialTests Of(IReadOnlyList<EquilibrationIndices> tests, SerialTestsOptions options)
    {
        ArgumentNullException.ThrowIfNull(tests);
        ArgumentNullException.ThrowIfNull(options);
        IReadOnlyList<EquilibrationIndices> dated = [.. tests.Where(indices => indices.Test.Date is not null).OrderBy(indices => indices.Test.Date)];
        var findings = new List<Finding>();
        if (dated.Count < tests.Count)
        {
            findings.Add(new(Severity.Warning, "series-test-undated", Invariant($"{tests.Count - dated.Count} of {tests.Count} tests have no date and are left out of the series.")));
        }

        if (dated.Select(indices => indices.Test.Patient.Code).Distinct().Count() > 1)
        {
            findings.Add(new(Severity.Error, "series-of-different-patients", "The tests carry different patient codes, so no course is given."));
            return new() { Options = options, Tests = dated, Courses = [], Findings = findings };
        }

        IReadOnlyList<SerialIndex> courses = [.. Followed.Select(one => Course(dated, one.AnyStrength, one.Read, options)).OfType<SerialIndex>()];
        return new() { Options = options, Tests = dated, Courses = courses, Findings = [.. findings, .. SerialFindings.Of(dated, courses, options.Thresholds)] };
    }

    private static bool IsSameStrength(EquilibrationTest one, EquilibrationTest other) => !one.IsStrengthInDoubt && !other.IsStrengthInDoubt
        && one.Solution.Agent == other.Solution.Agent
        && Math.Abs((one.Solution.Glucose - other.Solution.Glucose).MillimolesPerLiter) <= 0.06 * other.Solution.Glucose.MillimolesPerLiter;

    private static SerialIndex? Course(
        IReadOnlyList<EquilibrationIndices> dated, bool anyStrength, Func<EquilibrationIndices, IndexValue?> read, SerialTestsOptions options)
    {
        IReadOnlyList<SerialPoint> points =
        [
            .. dated
                .Where(indices => anyStrength
                    ? indices.Test.Solution.Agent == dated[^1].Test.Solution.Agent
                    : IsSameStrength(indices.Test, dated[^1].Test))
                .Where(indices => read(indices) is not null)
                .Select(indices => new SerialPoint(indices.Test.Date!.Value, read(indices)!)),
        ];
        if (points.Count < 2)
        {
            return null;
        }

        var index = points[^1].Index;
        var mean = points.Average(point => Math.Abs(point.Index.Value));
        var deviation = index switch
        {
            { Unit: "" } => options.RatioDeviation,
            { Name: "net ultrafiltration" } => options.UltrafiltrationDeviation.Milliliters,
            { Unit: "mmol/L" } => options.SodiumDipDeviation.MillimolesPerLiter,
            { Name: var name } when name.StartsWith("mass transfer", StringComparison.Ordinal) => options.MassTransferVariation * mean,
            _ => index.StandardDeviation ?? 0,
        };
        return deviation > 0
            ? new() { Name = index.Name, Points = points, WithinPerson = new("within-person standard deviation", deviation, index.Unit, "one test", Within) }
            : null;
    }
}
