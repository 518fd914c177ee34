using Transport.Reporting;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Charts;

/// <summary>Charts and tables of regimens side by side say what was computed, lead with the difference, and carry their cautions.</summary>
public sealed class RegimenOutlookChartTests
{
    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    private static readonly Lazy<RegimenComparison> Compared = new(() => RegimenComparison.Run(
        Patient.Example,
        MembraneEnsemble.Of(Membrane),
        Night(5),
        [("A", Night(6)), ("B", Night(5, new(DialysisSolution.Icodextrin, Milliliters(2_000))))],
        OutlookOptions.Default with { Tested = DialysisSolution.Glucose136, Simulation = new() { Timeline = TimeSpan.FromMinutes(10) } }));

    [Fact]
    public void The_chart_of_a_comparison_has_a_panel_for_each_figure_and_a_point_for_each_option()
    {
        var figure = RegimenCharts.Comparison(Compared.Value);
        Assert.Equal(8, figure.Panels.Count);
        Assert.All(figure.Panels, panel =>
        {
            Assert.Equal(["B", "A"], panel.YAxis.TickLabels);
            Assert.Equal(2, Assert.Single(panel.Series).X.Count);
            Assert.Equal("now", Assert.Single(panel.Marks).Label);
        });
        var kt = figure.Panels[1];
        Assert.Equal(Compared.Value.Rows[1][OutcomeMeasures.KtOverV].Difference!.Value.Median, kt.Series[0].X[0], 1e-12);
        Assert.StartsWith("Kt/V urea, total: now 1.", kt.Title, StringComparison.Ordinal);
        Assert.Contains("A: one cycle more.", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("glucose meters", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("B: ultrafiltration, 24 h +", figure.AltText, StringComparison.Ordinal);
        Assert.Contains("<svg", SvgRenderer.ToSvg(figure), StringComparison.Ordinal);
        Assert.Single(RegimenCharts.Comparison(Compared.Value, OutcomeMeasures.Ultrafiltration).Panels);
        Assert.Throws<ArgumentException>(() => RegimenCharts.Comparison(Compared.Value, OutcomeMeasures.PhosphateRemoved));
    }

    [Fact]
    public void Days_stand_side_by_side_on_one_scale()
    {
        var figure = RegimenCharts.Days(Compared.Value);
        Assert.Equal(["now", "A", "B"], figure.Panels.Select(panel => panel.Title));
        Assert.Single(figure.Panels.Select(panel => panel.YAxis.Range).Distinct());
        var without = RegimenComparison.Run(Patient.Example, MembraneEnsemble.Of(Membrane), Night(5), [("A", Night(6))]);
        Assert.Throws<ArgumentException>(() => RegimenCharts.Days(without));
        Assert.Throws<ArgumentException>(() => RegimenCharts.Comparison(RegimenComparison.Run(Patient.Example, MembraneEnsemble.Of(Membrane), Night(5), [])));
    }

    [Fact]
    public void The_table_of_a_comparison_leads_with_what_would_differ()
    {
        var text = RegimenReports.Of(Compared.Value).Text;
        Assert.True(text.IndexOf("What would differ from now", StringComparison.Ordinal) < text.IndexOf("What each returns", StringComparison.Ordinal));
        Assert.Contains("symptoms, volume and nutrition are not assessed here", text, StringComparison.Ordinal);
        Assert.Contains("glucose meters", text, StringComparison.Ordinal);
        Assert.Contains("not given", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", text, StringComparison.Ordinal);
        var one = RegimenReports.Of(Compared.Value.Present).Text;
        Assert.Contains("Σ drained − Σ filled", one.Replace('\u00A0', ' '), StringComparison.Ordinal);
        Assert.Contains("Protein catabolism comes from a measured collection only", one.Replace('\u00A0', ' '), StringComparison.Ordinal);
    }

    [Fact]
    public void A_knob_has_a_band_in_each_panel_and_a_row_for_each_place()
    {
        var whatIf = WhatIf.Run(Patient.Example, MembraneEnsemble.Of(Membrane), Night(5), RegimenKnob.NightLength, [1, 8, 10, 9], OutlookOptions.Default);
        var figure = RegimenCharts.Of(whatIf);
        Assert.Equal(4, figure.Panels.Count);
        Assert.All(figure.Panels, panel => Assert.Equal([8.0, 9, 10], Assert.Single(panel.Bands).X));
        Assert.Contains("as the night length goes from 8 to 10 h", figure.AltText, StringComparison.Ordinal);
        var text = RegimenReports.Of(whatIf).Text;
        Assert.Contains("not possible", text, StringComparison.Ordinal);
        Assert.Contains("too short for 5 cycles", text, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => RegimenCharts.Of(WhatIf.Run(Patient.Example, MembraneEnsemble.Of(Membrane), Night(5), RegimenKnob.NightLength, [9])));
    }

    [Fact]
    public void The_account_of_a_night_is_a_table_of_its_cycles()
    {
        var text = RegimenReports.Of(NightAccount.Of(Compared.Value.Present.Outcome)).Text;
        Assert.Contains("dwell lost against the plan", text, StringComparison.Ordinal);
        Assert.Equal(5, text.Split('\n').Count(line => line.Length > 0 && char.IsDigit(line[0])));
        Assert.Contains("not known", RegimenReports.Of(new NightAccount(new CycleAccount(Milliliters(2_000), Milliliters(2_100)))).Text, StringComparison.Ordinal);
    }
}
