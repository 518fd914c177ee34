namespace Transport.Tests;

/// <summary>From a sheet to options for the night: what catches a line that is wrong though each of its parts is right.</summary>
public sealed class MainJobTests
{
    [Fact]
    public void One_sheet_with_and_without_its_glucose_factor_moves_category_area_curves_and_nights()
    {
        // The worked case of the correction (computed): High-average with the factor, High without it. A tool that corrects only its table
        // would show the change in the first of the four.
        var (with, without) = (Answer("jaffe", "0.000531415"), Answer("jaffe", ""));
        Assert.Equal(TransportCategory.FastAverage, with.Indices.Classification!.Category);
        Assert.Equal(TransportCategory.Fast, without.Indices.Classification!.Category);
        Assert.True(Area(without) > 1.02 * Area(with), $"{Area(with)} {Area(without)}");
        Assert.True(Math.Abs(FourHours(with) - FourHours(without)) > 1, $"{FourHours(with)} {FourHours(without)} mL");
        Assert.NotEqual(
            with.Front.Options.Select(option => Math.Round(option.Outcome.CreatinineDose.Peritoneal.LitersPerWeek, 1)),
            without.Front.Options.Select(option => Math.Round(option.Outcome.CreatinineDose.Peritoneal.LitersPerWeek, 1)));

        static double Area(Line line) => line.Fit[MembraneParameter.DiffusionArea].Value;

        static double FourHours(Line line) => line.Curves[2].NetUltrafiltration.Median[24];
    }

    private static Line Answer(string method, string factor)
    {
        var sheet = $"""
            section,item,time,value,unit,remark
            patient,code,,invented data,,
            patient,sex,,male,,
            patient,age,,60,years,
            patient,height,,170,cm,
            patient,weight,,70,kg,
            patient,urine volume,,0,mL/day,
            test,solution glucose,,126,mmol/L,
            test,solution sodium,,132,mmol/L,
            test,osmotic agent,,glucose,,
            test,fill volume,,2000,mL,
            test,fill basis,,weighed,,
            test,dwell,,4:00,,
            test,drained volume,,2290,mL,
            test,creatinine method,,{method},,
            {(factor.Length > 0 ? $"test,glucose factor,,{factor},mg/dL per mg/dL," : "")}
            dialysate,creatinine,0,1.60,mg/dL,
            dialysate,creatinine,120,6.10,mg/dL,
            dialysate,creatinine,240,8.10,mg/dL,
            dialysate,glucose,0,1980,mg/dL,
            dialysate,glucose,120,1120,mg/dL,
            dialysate,glucose,240,760,mg/dL,
            plasma,creatinine,120,9.80,mg/dL,
            plasma,glucose,120,110,mg/dL,
            """;
        using var stream = new MemoryStream(System.Text.Encoding.UTF8.GetBytes(sheet));
        var test = SampleSheet.Read(stream, "sheet.csv").ToTest();
        var fit = MembraneFit.Run(test);
        var ensemble = fit.ToGaussianEnsemble(20, seed: 5);
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(600), Volume.FromMilliliters(1000)));
        var space = new RegimenSpace
        {
            NightLengths = [TimeSpan.FromHours(9)],
            Cycles = [3, 4, 5, 6],
            VolumesPerCycle = [Volume.FromMilliliters(2000)],
            DayFills = [null, new(DialysisSolution.Glucose136, Volume.FromMilliliters(1500))],
        };
        return new(
            EquilibrationIndices.Of(test),
            fit,
            DwellCurves.Run(test.Patient, ensemble, new() { Tested = test.Solution }),
            RegimenSearch.Run(test.Patient, ensemble, goals, space, options: new() { Tested = test.Solution }));
    }

    private sealed record Line(EquilibrationIndices Indices, FittedMembrane Fit, IReadOnlyList<DwellCurve> Curves, RegimenFront Front);
}
