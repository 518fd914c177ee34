using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>The pictures of the regimens page: three regimens for two invented patients, as the public charts draw them.</summary>
public sealed class RegimenPictureTests
{
    [Theory]
    [InlineData("merrow-01-average", "regimens-average.svg")]
    [InlineData("merrow-02-fast", "regimens-fast.svg")]
    public void A_committed_picture_says_what_its_chart_says(string sheet, string picture)
    {
        // Not every letter: the words of the chart hold its figures, rounded as they are printed.
        var figure = Figure(sheet);
        var path = Path.Combine(Repository.Root, "docs", "concepts", picture);
        if (Environment.GetEnvironmentVariable("MAKE_PICTURES") == "1")
        {
            File.WriteAllText(path, SvgRenderer.ToSvg(figure) + "\n");
        }

        Assert.Contains(figure.AltText, File.ReadAllText(path), StringComparison.Ordinal);
    }

    private static Figure Figure(string name)
    {
        var test = SampleSheet.Read(Path.Combine(ReferenceData.Folder, "examples", name + ".csv")).ToTest();
        var night = TimeSpan.FromHours(9);
        var (two, weak) = (Volume.FromLiters(2), DialysisSolution.Glucose136);
        var present = Regimen.Cycling(night, 4, two, weak, new DayFill(weak, two));
        (string, Regimen)[] others =
        [
            ("icodextrin by day", present with { DayFill = new(DialysisSolution.Icodextrin, two) }),
            ("six, dry day", Regimen.Cycling(night, 6, two, weak)),
        ];
        var compared = RegimenComparison.Run(
            test.Patient, MembraneSampling.Run(MembraneFit.Run(test)).ToEnsemble(60), present, others, OutlookOptions.Default with { Tested = test.Solution, EnsembleMembers = 60 });
        return RegimenCharts.Comparison(compared, OutcomeMeasures.Ultrafiltration, OutcomeMeasures.KtOverV, OutcomeMeasures.SodiumRemoved, OutcomeMeasures.GlucoseAbsorbed);
    }
}
