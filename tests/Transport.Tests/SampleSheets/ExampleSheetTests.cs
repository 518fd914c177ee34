using System.Text;
using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

/// <summary>The invented patients of reference-data/examples, and the blank sheet.</summary>
public class ExampleSheetTests
{
    // What each story says, to the digits it says it with. D/P and D/D0 at the end of the dwell, ultrafiltration in mL.
    [Theory]
    [InlineData("merrow-01-average.csv", 0.70, 0.36, 330, 126.0)]
    [InlineData("merrow-02-fast.csv", 0.86, 0.17, 400, 214.3)]
    [InlineData("merrow-03-slow.csv", 0.52, 0.50, 560, 126.0)]
    [InlineData("merrow-04-lost-dip.csv", 0.72, 0.27, 190, 214.3)]
    public void An_example_is_the_patient_of_its_story(string file, double ratio, double glucoseRatio, double ultrafiltration, double strength)
    {
        var test = SampleSheet.Read(Example(file)).ToTest();
        var (first, last) = (test.Dialysate[0], test.Dialysate[^1]);

        Assert.Equal(ratio, test.CorrectedDialysateCreatinine(last)!.Value / test.CorrectedPlasmaCreatinine!.Value, 2);
        Assert.Equal(glucoseRatio, last.Glucose!.Value / first.Glucose!.Value, 2);
        Assert.Equal(ultrafiltration, test.NetUltrafiltration!.Value.Milliliters, 6);
        Assert.Equal(strength, test.Solution.Glucose.MillimolesPerLiter, 1);
    }

    // Sodium at 0 less sodium at 60 min, as the sheets give it: 131 - 126 and 131.5 - 129.5 mmol/L.
    [Theory]
    [InlineData("merrow-02-fast.csv", 5.0)]
    [InlineData("merrow-04-lost-dip.csv", 2.0)]
    public void The_dip_of_sodium_is_the_storys(string file, double dip)
    {
        var test = SampleSheet.Read(Example(file)).ToTest();
        var hour = test.SampleAt(TimeSpan.FromHours(1), TimeSpan.Zero)!;
        Assert.Equal(dip, (test.Dialysate[0].Sodium!.Value - hour.Sodium!.Value).MillimolesPerLiter, 9);
    }

    // The story's figures, to the digits it says them with.
    [Fact]
    public void The_first_hour_of_the_temporary_drain_is_the_storys()
    {
        var indices = EquilibrationIndices.Of(SampleSheet.Read(Example("merrow-05-temporary-drain.csv")).ToTest());
        Assert.Equal(TestForm.TemporaryDrain, indices.Form);
        Assert.Equal(410, indices.FirstHour!.NetUltrafiltration.Value, 1e-9);
        Assert.Equal(0.4, indices.FirstHour.FreeWaterFraction!.Value, 0.05);
        Assert.Equal(220, indices.ResidualVolume!.Value, 10.0);
        Assert.Equal(680, indices.NetUltrafiltration!.Value, 1e-9);
        Assert.Equal(0.68, indices.DialysateToPlasmaCreatinine!.Value, 0.005);
        Assert.DoesNotContain(indices.Findings, finding => finding.Severity != Severity.Note);
    }

    [Fact]
    public void The_days_collection_is_the_storys()
    {
        var indices = CollectionIndices.Of(SampleSheet.Read(Example("merrow-06-collection.csv")).ToCollection());
        Assert.Equal(1.37, indices.WeeklyUreaDose.Peritoneal!.Value, 0.005);
        Assert.Equal(0.78, indices.WeeklyUreaDose.Renal!.Value, 0.005);
        Assert.Equal(7.1, indices.ProteinLoss!.Value, 0.05);
        Assert.Empty(indices.Findings);
    }

    // The examples hold nothing to warn of; the notes say what was not measured.
    [Fact]
    public void No_example_has_a_warning() =>
        Assert.All(Directory.GetFiles(Example("."), "merrow-*.csv"), file =>
            Assert.DoesNotContain(SampleSheet.Read(file).Findings, finding => finding.Severity != Severity.Note));

    [Fact]
    public void Every_example_says_that_it_is_invented_and_has_its_story()
    {
        var files = Directory.GetFiles(Example("."), "*.csv");
        Assert.Equal(8, files.Length);
        Assert.All(files, file =>
        {
            using var reader = new StreamReader(file, Encoding.Latin1, detectEncodingFromByteOrderMarks: true);
            Assert.Contains("nvented data", reader.ReadToEnd());
            Assert.Contains("nvented data", File.ReadAllText(Path.ChangeExtension(file, ".md")));
        });
    }

    [Fact]
    public void Every_mistake_of_the_sheet_with_mistakes_is_found_in_its_row()
    {
        var sheet = SampleSheet.Read(Example("sheet-with-mistakes.csv"));
        var found = sheet.Findings.Where(finding => finding.Row is not null).Select(finding => (finding.Row!.Value, finding.Code)).ToHashSet();

        Assert.False(sheet.TryToTest(out _));
        Assert.Superset(
            new HashSet<(int, string)>
            {
                (6, "unit-swap"), // height
                (7, "ambiguous-date"),
                (8, "percentage-without-convention"),
                (9, "label-without-overfill"),
                (11, "dwell-not-comparable"),
                (12, "jaffe-without-factor"),
                (13, "unknown-item"),
                (16, "ratio-falling"), // swapped samples
                (17, "not-a-number"), // <5
                (20, "unknown-unit"),
                (21, "time-beyond-dwell"),
                (22, "unit-swap"), // plasma creatinine
                (24, "duplicate-measurement"),
            },
            found);
        Assert.Contains(sheet.Findings, finding => finding is { Code: "missing-patient-fact", Field: "weight" });
        Assert.DoesNotContain(sheet.Findings, finding => finding.Code == "missing-initial-glucose"); // it is there, only unreadable

        var page = File.ReadAllText(Repository("docs", "sample-sheet.md"));
        var quoted = page.Split('\n').Where(line => line.StartsWith("sheet-with-mistakes.csv,", StringComparison.Ordinal)).Select(line => line.TrimEnd()).ToHashSet();
        Assert.Equal(3, quoted.Count);
        Assert.Subset(sheet.Findings.Select(finding => finding.ToString()).ToHashSet(), quoted);
        Assert.Contains(sheet.Findings, finding => finding.Code == "missing-drained-volume");
    }

    // A blank sheet lacks what is to be filled in, and nothing in it has to be corrected.
    [Fact]
    public void The_blank_sheet_only_lacks_values()
    {
        using var writer = new StringWriter();
        SampleSheet.WriteBlank(writer);
        var sheet = Read(writer.ToString());

        Assert.All(sheet.Findings, finding => Assert.Matches("^(missing-|plasma-not-measured|solution-sodium-assumed|residual-function-not-given|assay-not-stated)", finding.Code));
        Assert.Contains(sheet.Findings, finding => finding.Code == "missing-plasma-creatinine");
    }

    // Filled in with the clean sheet's values, the blank sheet is the clean sheet.
    [Fact]
    public void The_blank_sheet_filled_in_becomes_a_test()
    {
        using var writer = new StringWriter();
        SampleSheet.WriteBlank(writer);
        var clean = Clean.Split('\n').Select(line => line.Split(',')).Where(fields => fields.Length > 4).ToDictionary(fields => (fields[0], fields[1], fields[2]), fields => fields[3]);
        var filled = writer.ToString().Split("\r\n").Select(line =>
        {
            var fields = line.Split(',');
            return fields.Length > 4 && clean.TryGetValue((fields[0], fields[1], fields[2]), out var value)
                ? string.Join(',', [.. fields[..3], value, .. fields[4..]])
                : line;
        });
        var sheet = Read(string.Join("\r\n", filled));

        Assert.Empty(sheet.Findings);
        Assert.Equivalent(Read(Clean).ToTest(), sheet.ToTest(), strict: true);
    }

    [Fact]
    public void The_blank_sheet_as_a_file_keeps_its_micro()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".csv");
        try
        {
            SampleSheet.WriteBlank(path);
            Assert.Equal([0xEF, 0xBB, 0xBF], File.ReadAllBytes(path)[..3]);
            Assert.Contains("µmol/L", File.ReadAllText(path));
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static string Example(string file) => Repository("reference-data", "examples", file);
}
