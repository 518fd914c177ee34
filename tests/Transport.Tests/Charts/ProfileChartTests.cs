using Transport.Reporting;

namespace Transport.Tests.Charts;

public sealed class ProfileChartTests
{
    [Fact]
    public void A_profile_is_drawn_with_its_limit_and_says_where_an_end_is_open()
    {
        // 3.84 is the 95 % quantile of χ² with one degree of freedom (any table). The upper end is not reached.
        var profile = new ParameterProfile(MembraneParameter.LymphaticRemoval, 0.3, 0.1, null, 0.95, [(0.05, 9), (0.1, 3.84), (0.3, 0), (0.6, 0.5), (1.2, 1.1)], false);
        Assert.Equal(3.84, profile.Limit, 0.002);
        var figure = PosteriorCharts.Profile(profile);
        Assert.Contains("upper end open", figure.AltText, StringComparison.Ordinal);
        // The limit is drawn at its root.
        Assert.Equal(1.96, figure.Panels[0].Marks[0].Y!.Value.Lower, 0.001);
        Assert.Contains("<svg", SvgRenderer.ToSvg(figure), StringComparison.Ordinal);
    }
}
