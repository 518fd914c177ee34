using System.Globalization;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace Transport.Reporting;

/// <summary>A month at a glance for a clinic visit: one sheet of A4 that needs nothing but itself and prints in grey.</summary>
public static partial class RecordPage
{
    private const int Days = 35;
    private const int MostFindings = 7;
    private const int FewestFindings = 2;
    private const int LongestQuote = 150;

    // Of what a panel usually has: below it the names of axes overlap.
    private const double LowestPanel = 0.9;
    private const string Meters = "record-icodextrin-meter";

    private const string Style =
        "@page{size:A4;margin:11mm 13mm}*{box-sizing:border-box}body{font:9.6pt/1.34 Arial,Helvetica,sans-serif;color:#1a1a1a;background:#fff;max-width:184mm;margin:8mm auto}"
        + "@media print{body{margin:0;max-width:none}}h1{font-size:13pt;margin:0}p{margin:0.35em 0}.whose{display:flex;justify-content:space-between;border-bottom:1px solid #444;padding-bottom:3px;margin-bottom:5px}"
        + ".first{border:2.5px solid #000;padding:3px 8px;font-weight:bold;margin:5px 0}ul{margin:0.3em 0;padding-left:1.2em}li{margin:0.22em 0}"
        + "table{border-collapse:collapse;width:100%;margin:4px 0;font-variant-numeric:tabular-nums}th,td{text-align:right;padding:1px 5px;border-bottom:0.5px solid #aaa}th{font-weight:normal;color:#444;vertical-align:bottom}th:first-child,td:first-child{text-align:left}"
        + "figure{margin:3px 0}svg{width:100%;height:auto;display:block}small,.small{font-size:8pt;color:#333}.day{white-space:nowrap}";

    /// <summary>The page.</summary>
    /// <param name="review">The review.</param>
    /// <param name="testedOn">Date of the test whose membrane the expectations come from; null where not known.</param>
    /// <param name="sheet">The sheet of that test; null where there was none at hand. Where either of the two is invented, the page says so.</param>
    /// <param name="fit">The fit that the expectations come from; null where it is not at hand.</param>
    /// <param name="indices">The indices of the test, which know whether it is preliminary and by which limits; null where they are not at hand.</param>
    /// <exception cref="ArgumentException">Sheet, fit or indices carry another patient's code than the review.</exception>
    public static string Of(RecordReview review, DateOnly? testedOn = null, SampleSheet? sheet = null, FittedMembrane? fit = null, EquilibrationIndices? indices = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        RequireOnePerson(review, sheet?.Code, nameof(sheet));
        RequireOnePerson(review, fit?.Patient.Code, nameof(fit));
        RequireOnePerson(review, indices?.Test.Patient.Code, nameof(indices));
        var page = new StringBuilder();
        var last = review.Nights.Count > 0 ? review.Nights[^1].Record.Date : (DateOnly?)null;
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title>Nights of {Escape(review.Patient.Code)}</title>\n<style>{Style}</style>\n</head>\n<body>\n")
            .Append(CultureInfo.InvariantCulture, $"<div class=\"whose\"><h1>What the nights say</h1><div>{Escape(Whose(review, last, testedOn, review.Book.IsInvented || sheet?.IsInvented == true, PageHeader.IsPreliminary(indices)))}</div></div>\n");
        if (last is null)
        {
            page.Append("<p>The book holds no night that could be read.</p>").Append(review.Findings.Count > 0 ? Findings(review, FewestFindings) : "").Append(Problems(review));
            AppendClosing(page, review);
            return page.Append("</body>\n</html>\n").ToString();
        }

        if (TestAge(review, last.Value, testedOn) is { Length: > 0 } age)
        {
            page.Append("<p>").Append(Escape(age)).Append("</p>\n");
        }

        page.Append("<p class=\"small\">").Append(Escape(Basis(review, sheet, fit, indices))).Append("</p>\n");
        var below = new StringBuilder();
        AppendWeeks(below, review, last.Value);
        below.Append("<p>").Append(Escape(Text(review))).Append("</p>\n").Append(Problems(review));
        AppendClosing(below, review);
        return AppendMiddle(page, review, RecordPageHeight.Of(below.ToString())).Append(below).Append("</body>\n</html>\n").ToString();
    }

    // Of a code that is not written nothing can be said.
    private static void RequireOnePerson(RecordReview review, string? code, string name)
    {
        var expected = review.Patient.Code;
        if (!string.IsNullOrWhiteSpace(code) && !string.IsNullOrWhiteSpace(expected) && !string.Equals(code.Trim(), expected.Trim(), StringComparison.OrdinalIgnoreCase))
        {
            throw new ArgumentException($"Expected the {name} of '{expected}', whose nights were reviewed, and found that of '{code}': a page never mixes two persons.", name);
        }
    }

    // One sheet: first the panels get lower, then the lower ones give way, then what is least urgent. What may be an emergency stays.
    private static StringBuilder AppendMiddle(StringBuilder page, RecordReview review, double below)
    {
        var figure = RecordCharts.NightsOrNone(review, Days);
        var room = RecordPageHeight.Paper - RecordPageHeight.Of(page.ToString()) - below;
        var ways =
            from most in new[] { MostFindings, FewestFindings }
            let words = Findings(review, most)
            from panels in figure is null ? [0] : new[] { figure.Panels.Count, 3, 2, 1 }.Where(count => count <= figure.Panels.Count).Distinct()
            from height in figure is null ? [1] : new[] { 1, LowestPanel }
            select (Findings: words, Picture: figure is null ? "" : Picture(figure, panels, height), LeftOut: LeftOut(figure, panels));
        var (findings, picture, leftOut) = ways.FirstOrDefault(
            way => RecordPageHeight.Of(way.Findings + way.LeftOut) + RecordPageHeight.OfPicture(way.Picture) <= room,
            (Findings: Findings(review, FewestFindings), Picture: "", LeftOut: LeftOut(figure, 0)));
        return page.Append(findings).Append(picture).Append(leftOut);
    }

    private static string LeftOut(Figure? figure, int drawn) => figure is null || drawn == figure.Panels.Count
        ? ""
        : $"<p class=\"small\">Not drawn, since the sheet has no room: {Escape(string.Join(", ", figure.Panels.Skip(drawn).Select(panel => panel.YAxis.Label)))}.</p>\n";

    private static string Picture(Figure figure, int panels, double height) =>
        $"<figure>{SvgRenderer.ToSvg(figure.OnPanels(figure.Panels.Take(panels).Select(panel => panel with { RelativeHeight = height * panel.RelativeHeight })))}</figure>\n";

    private static void AppendClosing(StringBuilder page, RecordReview review)
    {
        page.Append("<p class=\"small\"><b>Before anybody acts on this.</b> No flag is not safety: this page looks for lasting change in what was written down and watches nobody. ")
            .Append(Escape(Caution.AtOnce)).Append(" Symptoms, fluid state, nutrition and laboratory values are not assessed here. An aid for licensed staff, no prescription and no order; confirm with the treating team, change nothing on this page alone. Local protocol rules. ")
            .Append(review.Book.PatientCode.Length > 0 ? "Book and test carry the same patient's code." : "The book carries no patient's code: whose it is was not checked.").Append("</p>\n");
        if (review.Findings.Any(finding => finding.Code == Meters))
        {
            page.Append("<p class=\"small\"><b>").Append(Typeset.Html(Caution.Of([DialysisSolution.Icodextrin]))).Append("</b></p>\n");
        }
    }

    // What is expected is of the day of the test; after half a year a new one tells (as on every report of a test).
    private static string TestAge(RecordReview review, DateOnly last, DateOnly? testedOn) => testedOn switch
    {
        { } test when review.Nights[0].Record.Date < test && last < test => "The book ends before the test: what is expected here is of a membrane measured later.",
        { } test when last.DayNumber - test.DayNumber > 183 => "The test is more than six months older than the last night: what is expected may no longer hold, and a new test tells.",
        _ => "",
    };

    // What the expectations rest on, in two lines: the fit, the first of what was found amiss in the sheet, and by what software and limits.
    private static string Basis(RecordReview review, SampleSheet? sheet, FittedMembrane? fit, EquilibrationIndices? indices)
    {
        var warnings = sheet?.Findings.Where(finding => finding.Severity >= Severity.Warning).ToList() ?? [];
        return string.Join(" ", new[]
        {
            fit is null ? null : fit.Status == FitStatus.Converged ? $"Fit of the test: {Cut(fit.Summary)}" : $"Read with care, the fit of the test: {Cut(fit.Summary)}",
            indices?.Classification is { IsComparable: false } comparable ? $"Preliminary: {Cut(string.Join(" ", comparable.Cautions))}" : null,
            sheet is null ? null : warnings.Count == 0 ? "No warning in its sheet."
                : string.Create(CultureInfo.InvariantCulture, $"{warnings.Count} {(warnings.Count == 1 ? "warning" : "warnings")} in its sheet, first: {Cut(warnings[0].Message)}"),
            $"{PageHeader.Version}. Limits: {review.Options.Limits.Name}.{(indices is null ? "" : $" Of the test: {indices.Options.Thresholds.Name}.")}",
        }.OfType<string>());
    }

    /// <summary>The beginning of a text that is too long for its line; never half of a letter that takes two characters.</summary>
    internal static string Cut(string text) =>
        text.Length <= LongestQuote ? text : text[..(char.IsHighSurrogate(text[LongestQuote - 1]) ? LongestQuote - 1 : LongestQuote)].TrimEnd() + " …";

    private static string Whose(RecordReview review, DateOnly? last, DateOnly? testedOn, bool isInvented, bool isPreliminary) => string.Join(" · ", new[]
    {
        review.Patient.Code.Length > 0 ? review.Patient.Code : "no code",
        last is { } day ? string.Create(CultureInfo.InvariantCulture, $"to {day:yyyy-MM-dd}") : null,
        testedOn is { } test ? string.Create(CultureInfo.InvariantCulture, $"test of {test:yyyy-MM-dd}") : "date of the test not given",
        isPreliminary ? "PRELIMINARY" : null,
        isInvented ? "invented data" : null,
    }.OfType<string>());

    private static string Findings(RecordReview review, int most)
    {
        var page = new StringBuilder();
        foreach (var finding in review.Findings.Where(finding => NurseFindings.Urgent.Contains(finding.Code)))
        {
            page.Append("<p class=\"first\">").Append(Words(finding)).Append("</p>\n");
        }

        // What may be an emergency is never among those that have no place.
        var others = review.Findings.Where(finding => !NurseFindings.Urgent.Contains(finding.Code) && finding.Code != Meters).ToList();
        var room = Math.Max(FewestFindings, most - review.Findings.Count(finding => NurseFindings.Urgent.Contains(finding.Code) || NurseFindings.NeverCut.Contains(finding.Code)));
        var cut = others.Where(finding => !NurseFindings.NeverCut.Contains(finding.Code)).Skip(room).ToList();
        if (others.Count > 0)
        {
            page.Append("<ul>");
            foreach (var finding in others.Except(cut))
            {
                page.Append("<li>").Append(finding.Severity == Severity.Warning ? "<b>Look at:</b> " : "").Append(Words(finding)).Append("</li>");
            }

            page.Append("</ul>\n");
            if (cut.Count > 0)
            {
                page.Append(CultureInfo.InvariantCulture, $"<p class=\"small\">{cut.Count} more of lesser urgency {(cut.Count == 1 ? "is" : "are")} in the list that the command prints.</p>\n");
            }
        }

        var isQuiet = others.Count == 0 && !review.Findings.Any(finding => NurseFindings.Urgent.Contains(finding.Code));
        return page.Append(isQuiet ? "<p>Nothing in these nights asked for attention. That is not safety: it is what this book can show. " : "<p class=\"small\">").Append(Escape(review.NotLookedAt)).Append("</p>\n").ToString();
    }

    // A date stays on one line.
    private static string Words(Finding finding) => Date().Replace(Typeset.Html(finding.Message), "<span class=\"day\">$0</span>");

    private static void AppendWeeks(StringBuilder page, RecordReview review, DateOnly last)
    {
        var one = review.Nights[^1].Record.IsByHand ? "day" : "night";
        page.Append(CultureInfo.InvariantCulture, $"<table><tr><th>week to</th><th>{one}s<br>written</th><th>UF, mL<br>a {one}</th><th>expected</th><th>initial<br>drain, mL</th><th>dwell lost,<br>min a night</th><th>strongest<br>bag, days</th><th>empty<br>weight, kg</th><th>pressure<br>sitting</th><th>urine,<br>mL/day</th></tr>\n");
        for (var week = 4; week >= 0; week--)
        {
            var end = last.AddDays(-7 * week);
            var nights = review.Nights.Where(night => night.Record.Date > end.AddDays(-7) && night.Record.Date <= end).ToList();
            if (nights.Count == 0)
            {
                continue;
            }

            page.Append(CultureInfo.InvariantCulture, $"<tr><td>{end:d MMM yyyy}</td><td>{nights.Count(night => !night.Record.IsSkipped)} of 7</td>")
                .Append(Mean(nights.Select(night => night.Ultrafiltration?.Milliliters)))
                .Append(Mean(nights.Select(night => night.Expected?.Median.Milliliters)))
                .Append(Mean(nights.Select(night => night.Record.InitialDrain?.Milliliters)))
                .Append(Mean(nights.Select(night => night.Record.LostDwell?.TotalMinutes)))
                .Append(CultureInfo.InvariantCulture, $"<td>{nights.Count(night => night.Record.UsesStrongest)}</td>")
                .Append(Mean(nights.Select(night => night.EmptyWeight?.Kilograms), 1))
                .Append(Pressure(nights))
                .Append(Mean(nights.Select(night => night.Record.Urine?.Milliliters)))
                .Append("</tr>\n");
        }

        page.Append("</table>\n");
    }

    private static string Pressure(List<ReviewedNight> nights)
    {
        var seen = nights.Select(night => night.Record.Sitting).OfType<BloodPressure>().ToList();
        return seen.Count == 0
            ? "<td>–</td>"
            : string.Create(CultureInfo.InvariantCulture, $"<td>{seen.Average(one => one.SystolicMillimetersOfMercury):0}/{seen.Average(one => one.DiastolicMillimetersOfMercury):0}</td>");
    }

    private static string Mean(IEnumerable<double?> values, int decimals = 0)
    {
        var seen = values.OfType<double>().ToList();
        return seen.Count == 0 ? "<td>–</td>" : $"<td>{Digits.Fixed(seen.Average(), decimals)}</td>";
    }

    private static string Text(RecordReview review)
    {
        var regimen = review.Nights[^1].Record.Regimen;
        var sentences = new List<string>
        {
            regimen is null ? "The book does not say all of what is run." : $"Run at the end: {regimen.Describe()}.",
        };
        if (review.NightDeviation is { } deviation)
        {
            sentences.Add(string.Create(CultureInfo.InvariantCulture, $"One night differs from the next by about {deviation.Milliliters:0} mL (standard deviation); a single night outside the band means little."));
        }

        if (review.Nights.Any(night => night.Record.IsByHand))
        {
            sentences.Add("Exchanges by hand are charted as whole days; a drain that leaves fluid behind shows in no such chart, since what stays comes with the next.");
        }
        else if (review.Nights.Any(night => night.HoldsDay))
        {
            sentences.Add("Ultrafiltration of night and day is one number in this book; an incomplete drain hides in it, since what stays tonight comes tomorrow. Writing the initial drain down would show it.");
        }

        sentences.Add("From nights alone it cannot be told whether transfer, conductance or fluid loss has changed; a test can.");
        return string.Join(" ", sentences);
    }

    private static string Problems(RecordReview review)
    {
        var count = review.Book.Findings.Count(finding => finding.Severity > Severity.Note);
        return count == 0 ? "" : string.Create(
            CultureInfo.InvariantCulture,
            $"<p class=\"small\">{count} {(count == 1 ? "place" : "places")} of the book could not be read or {(count == 1 ? "does" : "do")} not add up, first: {Escape(review.Book.Findings.First(finding => finding.Severity > Severity.Note).ToString())}</p>\n");
    }

    private static string Escape(string text) => WebUtility.HtmlEncode(text);

    [GeneratedRegex("[0-9]{4}-[0-9]{2}-[0-9]{2}")]
    private static partial Regex Date();
}
