using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Transport.Analysis;

/// <summary>Who is treated how, and by what it is judged: everything that decides a study's rows.</summary>
public sealed record StrategyStudyDesign
{
    /// <summary>Who.</summary>
    public required VirtualPopulation Population { get; init; }

    /// <summary>How; the first is the one that the others are compared with.</summary>
    /// <exception cref="ArgumentException">There is none, or two have one name.</exception>
    public required ImmutableArray<IDwellStrategy> Strategies
    {
        get;
        init => field = !value.IsDefaultOrEmpty && value.Select(strategy => strategy.Name).Distinct(StringComparer.Ordinal).Count() == value.Length
            ? value
            : throw new ArgumentException("Expected a strategy or more, with unlike names.", nameof(Strategies));
    }

    /// <summary>What is to be small.</summary>
    public required StrategyLoss Loss { get; init; }

    /// <summary>The limits that every regimen of the space keeps.</summary>
    public required RegimenGoals Limits { get; init; }

    /// <summary>The regimens to choose among; null: the usual space of each patient.</summary>
    public RegimenSpace? Space { get; init; }

    /// <summary>The test that each patient has.</summary>
    public SimulatedTestOptions Test { get; init; } = SimulatedTestOptions.Default;

    /// <summary>How the test is fitted.</summary>
    public MembraneFitOptions Fit { get; init; } = MembraneFitOptions.Default;

    /// <summary>How many patients.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 2: there is no interval.</exception>
    public required int Patients
    {
        get;
        init => field = value >= 2 ? value : throw new ArgumentOutOfRangeException(nameof(Patients), value, "Expected 2 patients or more.");
    }

    /// <summary>Seed of everything that is drawn.</summary>
    public int Seed { get; init; } = 2024;

    /// <summary>How many patients a file holds.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Less than 1.</exception>
    public int PatientsPerPart
    {
        get;
        init => field = value >= 1 ? value : throw new ArgumentOutOfRangeException(nameof(PatientsPerPart), value, "Expected 1 or more.");
    }
    = 50;

    /// <summary>How many patients at a time; the rows do not depend on it.</summary>
    public int Workers { get; init; } = Environment.ProcessorCount;

    /// <summary>How many files.</summary>
    public int Parts => (Patients + PatientsPerPart - 1) / PatientsPerPart;

    internal RegimenSpace SpaceOf(Patient patient) => Space ?? RegimenSpace.Usual(patient, Limits);

    /// <summary>The design in lines that a reader can follow and a program can compare.</summary>
    internal ImmutableArray<string> Lines()
    {
        var first = Population[Seed, 0];
        var grid = SpaceOf(first.Patient).All();
        return
        [
            $"population: {Population.Description}",
            .. new[] { 0, Math.Min(1, Patients - 1), Patients - 1 }.Distinct().Select(number => $"patient {number}: {Numbers(Population[Seed, number])}"),
            string.Create(CultureInfo.InvariantCulture, $"patients: {Patients}; seed: {Seed}; patients in a part: {PatientsPerPart}"),
            string.Create(CultureInfo.InvariantCulture, $"test: {Test.Fill} {Test.Solution.Name} ({Test.Solution.Glucose}) for {Test.Duration.TotalMinutes} min, sampled at {string.Join(", ", Test.SampleTimes.Select(time => time.TotalMinutes.ToString(CultureInfo.InvariantCulture)))} min; residual ± {Test.ResidualLogDeviation}; tails {Test.TailDegreesOfFreedom}"),
            string.Create(CultureInfo.InvariantCulture, $"errors: {Test.Errors.CreatinineVariation} {Test.Errors.UreaVariation} {Test.Errors.GlucoseVariation} {Test.Errors.SodiumVariation} {Test.Errors.SamplingVariation} {Test.Errors.CreatinineFloor} {Test.Errors.UreaFloor} {Test.Errors.GlucoseFloor} {Test.Errors.VolumeDeviation}"),
            string.Create(CultureInfo.InvariantCulture, $"fit: prior {Fit.UsesPrior}, free {string.Join(' ', Fit.Free ?? [])}, tails {Fit.StudentDegreesOfFreedom}, tolerance {Fit.Integration.RelativeTolerance}, iterations {Fit.MaximumIterations}, {string.Join(' ', Enum.GetValues<MembraneParameter>().Select(parameter => string.Create(CultureInfo.InvariantCulture, $"{MembraneCoordinates.Of(Fit.Prior.Center, parameter):R}±{Fit.Prior.LogDeviation(parameter):R}")))}"),
            $"loss: {Loss}",
            $"limits: {Limits}",
            string.Create(CultureInfo.InvariantCulture, $"space: {grid.Count} regimens, {Hash(string.Join('\n', grid))}"),
            .. Strategies.Select(strategy => $"strategy {strategy.Name}: {strategy.Description}"),

            // What another build computes is another study: parts of both must not stand side by side.
            $"library: {typeof(Regimen).Module.ModuleVersionId} {typeof(StrategyStudy).Module.ModuleVersionId}",
        ];
    }

    internal static string Hash(string text) => Hash(Encoding.UTF8.GetBytes(text));

    internal static string Hash(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    private static string Numbers(VirtualPatient one) => string.Create(
        CultureInfo.InvariantCulture,
        $"{string.Join(' ', Enum.GetValues<MembraneParameter>().Select(parameter => MembraneCoordinates.Of(one.Membrane, parameter).ToString("R", CultureInfo.InvariantCulture)))}; {one.Patient.Sex} {one.Patient.AgeYears} {one.Patient.Height} {one.Patient.Weight}; {one.Patient.Plasma.Creatinine} {one.Patient.Plasma.Urea} {one.Patient.Plasma.Glucose} {one.Patient.Plasma.Sodium}; {one.Patient.ResidualFunction.UreaClearance} {one.Patient.ResidualFunction.CreatinineClearance} {one.Patient.ResidualFunction.UrineVolumePerDay}");
}
