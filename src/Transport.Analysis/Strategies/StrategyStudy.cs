using System.Collections.Immutable;
using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;

namespace Transport.Analysis;

/// <summary>Treats virtual patients by several strategies: each is tested, fitted and given a regimen by what a clinic knows, and judged by the membrane that nobody saw.</summary>
public static class StrategyStudy
{
    /// <summary>Name of the table of all rows in a study's folder.</summary>
    public const string RowsFile = "rows.csv";

    /// <summary>Name of the table of what they come to.</summary>
    public const string SummaryFile = "summary.csv";

    /// <summary>A study in memory.</summary>
    /// <param name="design">Who, how, by what judged.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="ArgumentException">The population has fewer people than are asked for, or the space holds nothing that the limits allow.</exception>
    /// <exception cref="InvalidOperationException">A patient could not be tested and fitted; the message names the number.</exception>
    /// <exception cref="IntegrationException">A day could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped.</exception>
    public static StrategyStudyResult Run(StrategyStudyDesign design, RunControl? control = null)
    {
        Check(design);
        return new(design, Rows(design, 0, design.Patients, control ?? RunControl.None));
    }

    /// <summary>A study in a folder, part after part. Called again after a stop or a kill it goes on where it was; the files are the same as of a run without one.</summary>
    /// <remarks>
    /// A part is a Parquet file, written aside and renamed when it is whole; then the manifest that names it is, with its patients, seeds and hash. A part that the manifest does
    /// not name, or whose bytes are not those it names, is made again. In the end two CSV tables are written from the parts.
    /// </remarks>
    /// <param name="design">Who, how, by what judged.</param>
    /// <param name="directory">The folder; it is made if it is not there.</param>
    /// <param name="control">Watches and stops.</param>
    /// <exception cref="InvalidDataException">The folder holds another study, or a manifest that cannot be read. Nothing is written.</exception>
    /// <exception cref="ArgumentException">As of a study in memory.</exception>
    /// <exception cref="InvalidOperationException">As of a study in memory; parts that are done stay.</exception>
    /// <exception cref="IntegrationException">A day could not be integrated; parts that are done stay.</exception>
    /// <exception cref="OperationCanceledException">The study was stopped; parts that are done stay.</exception>
    public static StrategyStudyResult Run(StrategyStudyDesign design, string directory, RunControl? control = null)
    {
        Check(design);
        ArgumentException.ThrowIfNullOrWhiteSpace(directory);
        control ??= RunControl.None;
        var manifest = Open(design, directory);
        var parts = ImmutableArray.CreateBuilder<ImmutableArray<StrategyRow>>();
        for (var part = 0; part < design.Parts; part++)
        {
            var first = part * design.PatientsPerPart;
            var count = Math.Min(design.PatientsPerPart, design.Patients - first);
            var name = string.Create(CultureInfo.InvariantCulture, $"part-{part:00000}.parquet");
            if (Kept(manifest, name, directory) is { } bytes)
            {
                parts.Add(StrategyParquet.Read(bytes));
                control.Progress?.Report((double)(first + count) / design.Patients);
                continue;
            }

            var rows = Rows(design, first, count, control);
            var file = StrategyParquet.Write(rows);
            WholeFile.Write(Path.Combine(directory, name), stream => stream.Write(file));
            var done = new StudyPart(
                name, first, first + count - 1, rows[0].Seed, rows[^1].Seed, rows.Length, StrategyStudyDesign.Hash(file));
            manifest = manifest with { Done = [.. manifest.Done.Where(one => one.File != name).Append(done).OrderBy(one => one.FirstPatient)] };
            manifest.Write(directory);
            parts.Add(rows);
        }

        var result = new StrategyStudyResult(design, [.. parts.SelectMany(rows => rows)]);
        Tables(result, directory);
        return result;
    }

    /// <summary>The rows of one patient, as every run makes them.</summary>
    internal static StrategyRow[] RowsOf(StrategyStudyDesign design, int patient, RunControl control) => new StrategyWorker(design).Rows(patient, control);

    private static void Check(StrategyStudyDesign design)
    {
        ArgumentNullException.ThrowIfNull(design);
        if (design.Population.Count < design.Patients)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"The population has {design.Population.Count} people; asked for are {design.Patients}. Ask for fewer, or name a larger cohort."), nameof(design));
        }
    }

    private static StudyManifest Open(StrategyStudyDesign design, string directory)
    {
        var lines = design.Lines();
        if (StudyManifest.Read(directory) is { } known)
        {
            var other = known.Design.Except(lines).FirstOrDefault() ?? lines.Except(known.Design).FirstOrDefault();
            if (other is not null)
            {
                throw new InvalidDataException(
                    $"{directory} holds another study; nothing was written. Name another folder, or remove this one. Found: {other}. Expected: {lines.Except(known.Design).FirstOrDefault() ?? "no such line"}.");
            }

            WholeFile.Clear(directory);
            return known;
        }

        Directory.CreateDirectory(directory);
        WholeFile.Clear(directory);
        var manifest = new StudyManifest { Design = lines, Parts = design.Parts, Done = [] };
        manifest.Write(directory);
        return manifest;
    }

    private static byte[]? Kept(StudyManifest manifest, string name, string directory)
    {
        var path = Path.Combine(directory, name);
        return manifest.Done.FirstOrDefault(part => part.File == name) is { } part && File.Exists(path)
            && File.ReadAllBytes(path) is var bytes && StrategyStudyDesign.Hash(bytes) == part.Sha256
            ? bytes
            : null;
    }

    private static ImmutableArray<StrategyRow> Rows(StrategyStudyDesign design, int first, int count, RunControl control)
    {
        var rows = new StrategyRow[count][];
        ParallelRuns.Run(
            count,
            design.Workers,
            control,
            (double)first / design.Patients,
            (double)(first + count) / design.Patients,
            () => new StrategyWorker(design),
            (worker, i) => rows[i] = worker.Rows(first + i, control));
        return [.. rows.SelectMany(own => own)];
    }

    private static void Tables(StrategyStudyResult result, string directory)
    {
        Csv(RowsFile, StrategyColumns.All.Select(column => column.Name), result.Rows.Select(row => StrategyColumns.All.Select(column =>
            column.IsText ? column.Text(row) : column.Number(row).ToString("R", CultureInfo.InvariantCulture))));
        Csv(
            SummaryFile,
            ["strategy", "compared_with", "outcome", "mean", "low_95_percent", "high_95_percent"],
            result.Summaries.SelectMany(summary => Lines(summary)));

        void Csv(string name, IEnumerable<string> header, IEnumerable<IEnumerable<string>> lines) => WholeFile.Write(Path.Combine(directory, name), stream =>
        {
            using var csv = new CsvWriter(new StreamWriter(stream, leaveOpen: true), new CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" });
            foreach (var line in lines.Prepend(header))
            {
                foreach (var field in line)
                {
                    csv.WriteField(field);
                }

                csv.NextRecord();
            }
        });
    }

    private static IEnumerable<string[]> Lines(StrategySummary summary)
    {
        yield return Share("share_in_fluid_range", summary.ShareInRange);
        yield return Share("share_above_fluid_range", summary.ShareAboveRange);
        foreach (var (name, interval) in new[]
        {
            ("ultrafiltration_mL_per_day", summary.UltrafiltrationMilliliters), ("urea_Kt_over_V_per_week", summary.UreaDose),
            ("sodium_removed_mmol_per_day", summary.SodiumRemovedMillimoles), ("glucose_absorbed_g_per_day", summary.GlucoseAbsorbedGrams),
            ("loss_g", summary.LossGrams), ("regret_g", summary.RegretGrams),
        })
        {
            yield return Line("", name, interval);
        }

        if (summary.AgainstFirst is { } less)
        {
            foreach (var (name, interval) in new[]
            {
                ("ultrafiltration_mL_per_day", less.UltrafiltrationMilliliters), ("urea_Kt_over_V_per_week", less.UreaDose),
                ("sodium_removed_mmol_per_day", less.SodiumRemovedMillimoles), ("glucose_absorbed_g_per_day", less.GlucoseAbsorbedGrams), ("loss_g", less.LossGrams),
            })
            {
                yield return Line(less.Against, name, interval);
            }
        }

        string[] Share(string name, double share) => [summary.Strategy, "", name, Number(share), "", ""];

        string[] Line(string against, string name, MeanInterval interval) => [summary.Strategy, against, name, Number(interval.Mean), Number(interval.Low), Number(interval.High)];

        static string Number(double value) => value.ToString("R", CultureInfo.InvariantCulture);
    }
}
