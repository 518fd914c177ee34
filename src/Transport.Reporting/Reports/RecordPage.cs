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

    private const string Style =
        "@page{size:A4;margin:11mm 13mm}*{box-sizing:border-box}body{font:9.6pt/1.34 Arial,Helvetica,sans-serif;color:#1a1a1a;background:#fff;max-width:184mm;margin:8mm auto}"
        + "@media print{body{margin:0;max-width:none}}h1{font-size:13pt;margin:0}p{margin:0.35em 0}.whose{display:flex;justify-content:space-between;border-bottom:1px solid #444;padding-bottom:3px;margin-bottom:5px}"
        + ".first{border:2.5px solid #000;padding:3px 8px;font-weight:bold;margin:5px 0}ul{margin:0.3em 0;padding-left:1.2em}li{margin:0.22em 0}"
        + "table{border-collapse:collapse;width:100%;margin:4px 0;font-variant-numeric:tabular-nums}th,td{text-align:right;padding:1px 5px;border-bottom:0.5px solid #aaa}th{font-weight:normal;color:#444;vertical-align:bottom}th:first-child,td:first-child{text-align:left}"
        + "figure{margin:3px 0}svg{width:100%;height:auto;max-height:165mm;display:block}small,.small{font-size:7.8pt;color:#333}.day{white-space:nowrap}";

    /// <summary>The page.</summary>
    /// <param name="review">The review.</param>
    /// <param name="testedOn">Date of the test whose membrane the expectations come from; null where not known.</param>
    /// <param name="sheet">The sheet of that test; null where there was none at hand. Where either of the two is invented, the page says so.</param>
    public static string Of(RecordReview review, DateOnly? testedOn = null, SampleSheet? sheet = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        var page = new StringBuilder();
        var last = review.Nights.Count > 0 ? review.Nights[^1].Record.Date : (DateOnly?)null;
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; style-src 'unsafe-inline'\">\n")
            .Append(CultureInfo.InvariantCulture, $"<title>Nights of {Escape(review.Patient.Code)}</title>\n<style>{Style}</style>\n</head>\n<body>\n")
            .Append(CultureInfo.InvariantCulture, $"<div class=\"whose\"><h1>What the nights say</h1><div>{Escape(Whose(review, last, testedOn, review.Book.IsInvented || sheet?.IsInvented == true))}</div></div>\n");
        if (last is null)
        {
            return page.Append("<p>The book holds no night that could be read.</p>").Append(Problems(review)).Append("</body>\n</html>\n").ToString();
        }

        if (TestAge(review, last.Value, testedOn) is { Length: > 0 } age)
        {
            page.Append("<p>").Append(Escape(age)).Append("</p>\n");
        }

        AppendFindings(page, review);
        if (review.Nights.Count > 1 && review.Nights.Any(night => night.Ultrafiltration is not null || night.EmptyWeight is not null))
        {
            page.Append("<figure>").Append(SvgRenderer.ToSvg(RecordCharts.Nights(review, Days))).Append("</figure>\n");
        }

        AppendWeeks(page, review, last.Value);
        page.Append("<p>").Append(Escape(Text(review))).Append("</p>\n").Append(Problems(review));
        page.Append("<p class=\"small\"><b>Before anybody acts on this.</b> No flag is not safety: this page looks for lasting change in what was written down and watches nobody. Cloudy fluid, fever or belly pain, even with clear fluid: the patient contacts the unit at once and keeps the bag. ")
            .Append("Breathlessness, pain on filling, swelling or blood: stop and call. Symptoms, fluid state, nutrition and laboratory values are not assessed here. An aid for licensed staff, no prescription and no order; confirm with the treating team, change nothing on this page alone. Local protocol rules. ")
            .Append(CultureInfo.InvariantCulture, $"Limits: {Escape(review.Options.Limits.Name)}. ")
            .Append(review.Book.PatientCode.Length > 0 ? "Book and test carry the same patient's code." : "The book carries no patient's code: whose it is was not checked.").Append("</p>\n</body>\n</html>\n");
        return page.ToString();
    }

    // What is expected is of the day of the test; after half a year a new one tells (as on every report of a test).
    private static string TestAge(RecordReview review, DateOnly last, DateOnly? testedOn) => testedOn switch
    {
        { } test when review.Nights[0].Record.Date < test && last < test => "The book ends before the test: what is expected here is of a membrane measured later.",
        { } test when last.DayNumber - test.DayNumber > 183 => "The test is more than six months older than the last night: what is expected may no longer hold, and a new test tells.",
        _ => "",
    };

    private static string Whose(RecordReview review, DateOnly? last, DateOnly? testedOn, bool isInvented) => string.Join(" · ", new[]
    {
        review.Patient.Code.Length > 0 ? review.Patient.Code : "no code",
        last is { } day ? string.Create(CultureInfo.InvariantCulture, $"to {day:yyyy-MM-dd}") : null,
        testedOn is { } test ? string.Create(CultureInfo.InvariantCulture, $"test of {test:yyyy-MM-dd}") : "date of the test not given",
        isInvented ? "invented data" : null,
    }.OfType<string>());

    private static void AppendFindings(StringBuilder page, RecordReview review)
    {
        var urgent = review.Findings.Where(finding => finding.Code is "record-cloudy-now" or "record-pain-or-fever-now" or "record-symptoms-now").ToList();
        foreach (var finding in urgent)
        {
            page.Append("<p class=\"first\">").Append(Words(finding)).Append("</p>\n");
        }

        var others = review.Findings.Except(urgent).ToList();
        if (others.Count > 0)
        {
            page.Append("<ul>");
            foreach (var finding in others.Take(MostFindings))
            {
                page.Append("<li>").Append(finding.Severity == Severity.Warning ? "<b>Look at:</b> " : "").Append(Words(finding)).Append("</li>");
            }

            page.Append("</ul>\n");
            if (others.Count > MostFindings)
            {
                page.Append(CultureInfo.InvariantCulture, $"<p class=\"small\">{others.Count - MostFindings} more of lesser urgency are in the list that the command prints.</p>\n");
            }
        }
        else if (urgent.Count == 0)
        {
            page.Append("<p>Nothing in these nights asked for attention. That is not safety: it is what this book can show.</p>\n");
        }
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
                .Append(Mean(nights.Select(night => night.EmptyWeight?.Kilograms), "0.0"))
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

    private static string Mean(IEnumerable<double?> values, string format = "0")
    {
        var seen = values.OfType<double>().ToList();
        return seen.Count == 0 ? "<td>–</td>" : $"<td>{seen.Average().ToString(format, CultureInfo.InvariantCulture)}</td>";
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
            sentences.Add("Exchanges by hand are looked at as whole days; a drain that leaves fluid behind shows in none of them, since what stays comes with the next.");
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
