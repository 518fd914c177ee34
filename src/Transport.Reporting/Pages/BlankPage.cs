using System.Globalization;
using System.Net;
using System.Text;
using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>A blank sheet on A4 for the bedside: boxes for clock times, volumes and laboratory values, in the order of the day.</summary>
public static class BlankPage
{
    private const string Rules =
        ".c{display:inline-block;border:.7pt solid #1d2b33;width:7mm;height:7mm;margin-right:.6mm;vertical-align:middle}" +
        ".f{display:grid;grid-template-columns:1fr 1fr;gap:0 8mm}.f div{display:grid;grid-template-columns:auto 1fr auto;align-items:end;gap:2.5mm;min-height:8.6mm;border-bottom:.5pt solid #7a858b;padding:.6mm 0 .5mm}" +
        ".f label{line-height:1.1;max-width:54mm}.f label small{display:block}.f span{white-space:nowrap}" +
        "table{width:100%;margin-top:1mm}td,th{border:.5pt solid #7a858b;padding:.8mm 1.4mm;height:8.2mm;vertical-align:middle}td:last-child,th:last-child{padding-right:1.4mm}th{background:#eef2f3;font-size:8pt}th:first-child{width:46mm}" +
        "h2{margin-top:3mm}body{font-size:9pt}";

    private const int MostRoomyItems = 42;
    private const string Closer = ".f div{min-height:7.6mm}td,th{height:6.2mm;padding:.2mm 1.4mm}h2{margin-top:1.8mm}.c{width:6mm;height:5.6mm}";

    /// <summary>The page of a form of test or of a collection; it prints on one A4 page.</summary>
    public static ReportPage Of(TestForm form)
    {
        var rows = BlankSheet.Of(form);
        var title = PageWords.Capital($"{form.Name()}: sheet to fill in");
        var isLong = rows.Select(row => (row.Section.Split(' ')[0], row.Item)).Distinct().Count() > MostRoomyItems;
        var body = new StringBuilder($"<style>{Rules}{(isLong ? Closer : "")}</style><div class=\"head\"><h1>{Encode(title)}</h1><div class=\"small\">{Encode(PageHeader.Version)}, blank sheet</div></div>\n");
        var markdown = new StringBuilder($"# {title}\n\n");
        Facts("Person", rows.Where(row => row.Section == "patient"));
        var test = rows.Where(row => row.Section == "test" && row.Item is not ("test form" or "osmotic agent" or "end of inflow" or "start of drain" or "blood time")).ToList();
        Facts(form == TestForm.Collection ? "Collection" : "Bag, fluid and test", test);
        if (form == TestForm.Collection)
        {
            Clock("Clock times", ["last drain before it (begin)", "blood", "last drain (end)"]);
            Body(body, "Bags: one column each", rows.Where(row => row.Section.StartsWith("drain", StringComparison.Ordinal)), row => row.Section, markdown);
            Body(body, "Urine and blood", rows.Where(row => row.Section is "urine" or "plasma"), row => row.Section, markdown);
        }
        else
        {
            var times = rows.Where(row => row.Section == "dialysate").Select(row => row.Time).Distinct().OrderBy(time => double.Parse(time, CultureInfo.InvariantCulture)).ToList();
            var blood = rows.First(row => row.Section == "plasma").Time;
            Clock("Clock times (hh:mm). Time zero is the end of inflow.",
                ["end of inflow", .. times.Where(time => time is not ("0" or "240") && !(IsHour(form) && time == "60")).Select(time => Invariant($"sample {time} min")), Invariant($"blood {blood} min"), "start of drain"]);
            Body(body, "Laboratory: write the value, and the unit where it is another",
                rows.Where(row => row.Section is "dialysate" or "plasma"), row => row.Section == "plasma" ? "plasma" : row.Time + " min", markdown);
        }

        body.Append("<p class=\"small\">").Append(Encode(Advice(form))).Append("</p>");
        markdown.Append(Advice(form)).Append('\n');
        return new(title, PageStyle.Document(title, body.ToString()), markdown.ToString());

        void Facts(string heading, IEnumerable<BlankRow> facts)
        {
            body.Append("<h2>").Append(Encode(heading)).Append("</h2><div class=\"f\">");
            markdown.Append("## ").Append(heading).Append("\n\n");
            foreach (var fact in facts)
            {
                body.Append("<div><label>").Append(Encode(fact.Item)).Append(fact.Remark.Length > 0 ? $"<small>{Encode(fact.Remark)}</small>" : "").Append("</label><span>")
                    .Append(Encode(fact.Value)).Append("</span><span>").Append(Encode(fact.Unit)).Append("</span></div>");
                markdown.Append(Invariant($"- {fact.Item}: {(fact.Value.Length > 0 ? fact.Value : "______")} {fact.Unit}{(fact.Remark.Length > 0 ? $" ({fact.Remark})" : "")}\n"));
            }

            body.Append("</div>\n");
            markdown.Append('\n');
        }

        void Clock(string heading, IReadOnlyList<string> events)
        {
            const string box = "<span class=\"c\"></span>";
            body.Append("<h2>").Append(Encode(heading)).Append($"</h2><div class=\"f\" style=\"grid-template-columns:repeat({(events.Count > 4 ? 3 : 2)},1fr)\">");
            markdown.Append("## ").Append(heading).Append("\n\n");
            foreach (var one in events)
            {
                body.Append("<div><label>").Append(Encode(one)).Append("</label><span></span><span>").Append(box).Append(box).Append(" : ").Append(box).Append(box).Append("</span></div>");
                markdown.Append("- ").Append(one).Append(": __:__\n");
            }

            body.Append("</div>\n");
            markdown.Append('\n');
        }
    }

    // Items down, samples or bags across; a box that a sample has no use for is left grey.
    private static void Body(StringBuilder body, string heading, IEnumerable<BlankRow> values, Func<BlankRow, string> columnOf, StringBuilder markdown)
    {
        var rows = values.ToList();
        var columns = rows.Select(columnOf).Distinct().OrderBy(column => column == "plasma" ? double.MaxValue : Leading(column)).ToList();
        body.Append("<h2>").Append(Encode(heading)).Append("</h2><table><tr><th></th>").AppendJoin("", columns.Select(column => $"<th>{Encode(column)}</th>")).Append("</tr>");
        markdown.Append("## ").Append(heading).Append("\n\n| | ").AppendJoin(" | ", columns).Append(" |\n|---|").Append(string.Concat(columns.Select(_ => "---|"))).Append('\n');
        foreach (var item in rows.GroupBy(row => (row.Item, row.Unit)))
        {
            body.Append("<tr><th>").Append(Encode($"{item.Key.Item}, {item.Key.Unit}")).Append("</th>");
            markdown.Append(Invariant($"| {item.Key.Item}, {item.Key.Unit} |"));
            foreach (var column in columns)
            {
                var isDue = item.Any(row => columnOf(row) == column);
                body.Append(isDue ? "<td></td>" : "<td style=\"background:#d3dadd\"></td>");
                markdown.Append(isDue ? "   |" : " – |");
            }

            body.Append("</tr>");
            markdown.Append('\n');
        }

        body.Append("</table>\n");
        markdown.Append('\n');
    }

    private static double Leading(string column) =>
        double.TryParse(string.Concat(column.Where(letter => char.IsAsciiDigit(letter))), NumberStyles.Integer, CultureInfo.InvariantCulture, out var number) ? number : 0;

    private static bool IsHour(TestForm form) => form is TestForm.OneHour or TestForm.PairedOneHour;

    private static string Advice(TestForm form) => (form switch
    {
        TestForm.Collection => "Every bag from the drain after the begin up to and with the last one; urine of the same time, 0 where there is none. Weights in g or kg are welcome: 1 g counts as 1 mL, give the empty bag's weight as tare. ",
        TestForm.Fast => "The exact end of inflow decides: write it down when the bag has run in. ",
        TestForm.PairedOneHour => "One sheet for each of the two strengths, on the same day or within two weeks, with the same fill. ",
        TestForm.TemporaryDrain => "At 60 min drain completely, weigh, sample, and give the fluid back. ",
        _ => "",
    }) + "Glucose of the bag from its list of contents in mmol/L; a percentage only with the word anhydrous or monohydrate. Sodium of all samples by one method. What was not measured stays blank. Local protocol rules; a cloudy drain, fever or belly pain goes to the unit first.";

    private static string Encode(string words) => WebUtility.HtmlEncode(words);
}
