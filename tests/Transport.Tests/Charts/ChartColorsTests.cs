using System.Globalization;
using Transport.Reporting;

namespace Transport.Tests.Charts;

/// <summary>
/// Contrast as the web accessibility guideline (WCAG 2, memory) counts it: (L1 + 0.05) / (L2 + 0.05) of relative luminances;
/// 3 for lines and shapes, 4.5 for words, on light and on dark paper alike.
/// </summary>
public sealed class ChartColorsTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_tone_is_seen_and_every_word_is_read_on_its_paper(bool isDark)
    {
        string Drawn(string color) => ChartColors.All.Single(c => c.Light == color) is var found && isDark ? found.Dark : color;
        double Contrast(string color) => ContrastOf(Drawn(color), Drawn(ChartColors.Paper));

        Assert.True(Contrast(ChartColors.Ink) >= 7, "ink");
        Assert.All(Enum.GetValues<Tone>(), tone =>
        {
            Assert.True(Contrast(ChartColors.Of(tone)) >= 3, $"{tone}: {Contrast(ChartColors.Of(tone)):F2}");
            Assert.True(Contrast(ChartColors.OfText(tone)) >= 4.5, $"words in {tone}: {Contrast(ChartColors.OfText(tone)):F2}");
        });
    }

    /// <summary>A grey printer keeps luminance only. 1.4 between neighbors is the least step we tell apart in a thin line (choice).</summary>
    [Fact]
    public void The_three_lightnesses_of_the_hue_stay_apart_in_grey_print()
    {
        Assert.True(ContrastOf(ChartColors.Of(Tone.Strong), ChartColors.Of(Tone.Middle)) >= 1.4);
        Assert.True(ContrastOf(ChartColors.Of(Tone.Middle), ChartColors.Of(Tone.Light)) >= 1.4);
    }

    private static double ContrastOf(string a, string b)
    {
        var (dark, light) = (Math.Min(Luminance(a), Luminance(b)), Math.Max(Luminance(a), Luminance(b)));
        return (light + 0.05) / (dark + 0.05);
    }

    private static double Luminance(string hex)
    {
        double Linear(int from)
        {
            var channel = int.Parse(hex.AsSpan(from, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return channel <= 0.04045 ? channel / 12.92 : Math.Pow((channel + 0.055) / 1.055, 2.4);
        }
        return 0.2126 * Linear(1) + 0.7152 * Linear(3) + 0.0722 * Linear(5);
    }
}
