using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>What both renderers owe to a figure: its words, the same text every time, and nothing that needs a network.</summary>
public sealed partial class RendererTests
{
    public static TheoryData<string> Figures => ExampleFigures.Names;

    [Theory]
    [MemberData(nameof(Figures))]
    public void Title_alternative_text_axis_titles_and_names_are_in_both_pictures(string name)
    {
        var figure = ExampleFigures.Of(name);
        var words = new[] { figure.Title, figure.AltText }
            .Concat(figure.Panels.SelectMany(p => new[] { p.XAxis.Title, p.YAxis.Title, p.Title ?? "" }))
            .Concat(figure.Panels.SelectMany(p => p.YAxis.TickLabels ?? []).SelectMany(label => label.Split('\n')))
            .Concat(figure.Panels.SelectMany(p => p.Series).Select(s => s.Name))
            .Concat(figure.Panels.SelectMany(p => p.Bands).Select(b => b.Name))
            .Concat(figure.Panels.SelectMany(p => p.Marks).Select(m => m.Label))
            .Where(word => word.Length > 0)
            .ToArray();

        var svg = string.Join('\n', XDocument.Parse(SvgRenderer.ToSvg(figure)).DescendantNodes().OfType<XText>().Select(t => t.Value));
        var spec = string.Join('\n', Strings(JsonDocument.Parse(PlotlyRenderer.ToSpec(figure)).RootElement).Select(WebUtility.HtmlDecode));
        Assert.All(words, word =>
        {
            Assert.Contains(word, svg, StringComparison.Ordinal);
            Assert.Contains(word, spec, StringComparison.Ordinal);
        });
    }

    [Theory]
    [MemberData(nameof(Figures))]
    public void The_same_figure_gives_the_same_text(string name)
    {
        var figure = ExampleFigures.Of(name);
        Assert.Equal(SvgRenderer.ToSvg(figure), SvgRenderer.ToSvg(figure));
        Assert.Equal(PlotlyRenderer.ToSpec(figure), PlotlyRenderer.ToSpec(figure));
    }

    /// <summary>A notebook of a dozen charts stays under 1 MB: 60 kB for a picture and 40 kB for a specification.</summary>
    [Theory]
    [MemberData(nameof(Figures))]
    public void Pictures_are_small_hold_no_missing_numbers_and_ask_for_no_network(string name)
    {
        var figure = ExampleFigures.Of(name);
        var (svg, spec) = (SvgRenderer.ToSvg(figure), PlotlyRenderer.ToSpec(figure));
        Assert.InRange(svg.Length, 1, 60_000);
        Assert.InRange(spec.Length, 1, 40_000);
        foreach (var text in new[] { svg.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), spec })
        {
            Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", text, StringComparison.Ordinal);
            Assert.DoesNotContain("://", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_specification_holds_the_data_in_five_digits()
    {
        var figure = ExampleFigures.Ultrafiltration;
        using var spec = JsonDocument.Parse(PlotlyRenderer.ToSpec(figure));
        Assert.Equal(["data", "layout", "config"], spec.RootElement.EnumerateObject().Select(p => p.Name).Intersect(["data", "layout", "config"]));

        var series = figure.Panels[0].Series[1];
        var trace = spec.RootElement.GetProperty("data").EnumerateArray().Single(t => t.GetProperty("name").GetString() == series.Name);
        var y = trace.GetProperty("y").EnumerateArray().Select(v => v.GetDouble()).ToArray();
        Assert.Equal(series.Y.Count, y.Length);
        // Half a unit in the fifth digit is 5e-5 of the value at most: of 700 pixels a thirtieth. A sixth would cost a notebook its 300 kB.
        for (var i = 0; i < y.Length; i++) Assert.InRange(Math.Abs(y[i] - series.Y[i]), 0, 5e-5 * Math.Abs(series.Y[i]));
        Assert.All(LongNumber().Matches(PlotlyRenderer.ToSpec(figure)), match => Assert.Fail($"{match.Value} has more than five digits"));
    }

    [Fact]
    public void What_was_not_tested_is_dashed_in_both_pictures()
    {
        using var spec = JsonDocument.Parse(PlotlyRenderer.ToSpec(ExampleFigures.Ultrafiltration));
        var trace = spec.RootElement.GetProperty("data").EnumerateArray()
            .Single(t => t.GetProperty("name").GetString() == "214 mmol/L, not tested");
        Assert.Equal("8px,4px", trace.GetProperty("line").GetProperty("dash").GetString());
        Assert.Contains("stroke-dasharray=\"8,4\"", SvgRenderer.ToSvg(ExampleFigures.Ultrafiltration), StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_that_several_bands_share_stands_once_in_the_legend()
    {
        using var spec = JsonDocument.Parse(PlotlyRenderer.ToSpec(ExampleFigures.Ultrafiltration));
        var shown = spec.RootElement.GetProperty("data").EnumerateArray()
            .Where(t => t.GetProperty("showlegend").GetBoolean()).Select(t => t.GetProperty("name").GetString());
        Assert.Equal(["90 % band", "measured"], shown.Order(StringComparer.Ordinal));
        Assert.Single(SvgTexts(ExampleFigures.Ultrafiltration), text => text == "90 % band");
    }

    [Fact]
    public void Every_clip_path_of_a_picture_has_an_id_that_no_other_figure_uses()
    {
        Figure[] figures = [ExampleFigures.Ultrafiltration, ExampleFigures.Strips, ExampleFigures.Regimens, ExampleFigures.TwoPanels];
        var ids = figures.SelectMany(figure => ClipId().Matches(SvgRenderer.ToSvg(figure)).Select(m => m.Value)).ToArray();
        Assert.Equal(5, ids.Length);
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public void A_picture_is_an_image_to_a_screen_reader_and_its_colors_are_attributes_that_a_page_may_rename()
    {
        var svg = XDocument.Parse(SvgRenderer.ToSvg(ExampleFigures.Ultrafiltration)).Root!;
        Assert.Equal("img", svg.Attribute("role")!.Value);
        Assert.Contains("var(--figure-ink,#1d2b33)", svg.ToString(), StringComparison.Ordinal);
        Assert.Contains(svg.Descendants(), e => e.Attribute("fill")?.Value == "#1d2b33");
        Assert.DoesNotContain(svg.Descendants(), e => e.Attribute("style") is { } style && e != svg && style.Value.Length > 0);
    }

    [Fact]
    public void Text_that_looks_like_markup_stays_text_in_a_page()
    {
        var html = FigureHtml.Of(ExampleFigures.Regimens);
        Assert.Equal(2, EndOfScript().Count(html));
        Assert.DoesNotContain("<24 h>", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_written_page_carries_the_chart_program_once_and_the_static_picture()
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName() + ".html");
        try
        {
            FigureExport.WriteHtml(ExampleFigures.Ultrafiltration, path);
            var html = File.ReadAllText(path);
            Assert.Contains(SvgRenderer.ToSvg(ExampleFigures.Ultrafiltration), html, StringComparison.Ordinal);
            Assert.Equal(3, EndOfScript().Count(html));
            Assert.DoesNotMatch("<(script|link|img)[^>]*(src|href)=", html);
            Assert.InRange(html.Length, PlotlyScript.Read().Length, PlotlyScript.Read().Length + 60_000);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static IEnumerable<string> SvgTexts(Figure figure) =>
        XDocument.Parse(SvgRenderer.ToSvg(figure)).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value);

    private static IEnumerable<string> Strings(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.String => [.. element.GetString()!.Split("<br>"), string.Join(' ', element.GetString()!.Replace("<b>", "").Replace("</b>", "").Split("<br>"))],
        JsonValueKind.Array => element.EnumerateArray().SelectMany(Strings),
        JsonValueKind.Object => element.EnumerateObject().SelectMany(p => Strings(p.Value)),
        _ => [],
    };

    [GeneratedRegex(@"(?<![#A-Za-z])[1-9](\.?\d){5,}")]
    private static partial Regex LongNumber();

    [GeneratedRegex("(?<= id=\")f[0-9a-f]{8}-\\d")]
    private static partial Regex ClipId();

    [GeneratedRegex("</script")]
    private static partial Regex EndOfScript();
}
