using System.Globalization;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using static Transport.Tests.SampleSheets.Sheets;

namespace Transport.Tests.SampleSheets;

/// <summary>Two dialysate samples swapped: an error when the curve turns by more than three assay deviations, a warning otherwise, never silence.</summary>
public sealed class SwapPropertyTests
{
    // The spread of an assay as the sheet's limits state it: 3 % of the value, at least 9 µmol/L of creatinine, 0.2 mmol/L of urea and glucose (choices).
    private static double Spread(string analyte, double value) => Math.Max(0.03 * value, analyte == "creatinine" ? 9 : 0.2);

    private static readonly Gen<(string Analyte, double Early, double Late)> Curves =
        from analyte in Gen.Elements("creatinine", "urea", "glucose")
        from base100 in Gen.Choose(100, 900)
        from rise in Gen.Choose(1, 1200)
        let early = (analyte switch { "creatinine" => 0.5, "urea" => 0.015, _ => 0.09 }) * base100
        let late = early * (1 + rise / 1000.0)
        where Rounded(late) > Rounded(early)
        select analyte == "glucose" ? (analyte, Rounded(late), Rounded(early)) : (analyte, Rounded(early), Rounded(late));

    [Property(MaxTest = 300)]
    public Property A_swap_is_an_error_beyond_three_assay_deviations_and_a_warning_within() => Prop.ForAll(Curves.ToArbitrary(), curve =>
    {
        var (analyte, early, late) = curve;
        var unit = analyte == "creatinine" ? "µmol/L" : "mmol/L";
        string Sheet(double at120, double at240) => With(With(Clean, $"dialysate,{analyte},120", Row(120, at120)), $"dialysate,{analyte},240", Row(240, at240));
        string Row(int time, double value) => FormattableString.Invariant($"dialysate,{analyte},{time},{value},{unit},");

        string[] all = analyte == "glucose" ? ["glucose-rising", "glucose-not-falling"] : ["ratio-falling", "ratio-not-rising"];
        string[] At240(string text) => [.. Read(text).Findings.Where(finding => all.Contains(finding.Code) && finding.Message.Contains("120 min to 240 min", StringComparison.Ordinal)).Select(finding => finding.Code)];

        var turn = Math.Abs(late - early);
        var beyond = turn > 3 * double.Hypot(Spread(analyte, early), Spread(analyte, late));
        var (straight, swapped) = (At240(Sheet(early, late)), At240(Sheet(late, early)));
        return (straight.Length == 0 && swapped.SequenceEqual([beyond ? all[0] : all[1]])
                && Read(Sheet(late, early)).Findings.First(finding => finding.Code == swapped[0]).Severity == (beyond ? Severity.Error : Severity.Warning))
            .Label(FormattableString.Invariant($"{analyte} {early} then {late}: straight {string.Join(",", straight)}, swapped {string.Join(",", swapped)}, turn {turn}"));
    });

    private static double Rounded(double value) => double.Parse(value.ToString("0.00", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
