using System.Globalization;
using System.Net;
using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>Small drawings for the cell of a table: no letters, since the numbers stand beside them; one hue and grey.</summary>
internal static class StripSvg
{
    private const double Width = 300;
    private const double Height = 17;
    private const double Middle = Height / 2;
    private const double Reach = 3.5;

    /// <summary>
    /// A strip: the population's range as a bar, twice the range as a line, its center as a tick, the value as a disc with its uncertainty. The scale ends at three and a
    /// half ranges; a value beyond is an arrow at the edge.
    /// </summary>
    public static string Of(StripRow row)
    {
        var half = row.Population.Width / 2;
        double At(double value) => Width / 2 * (1 + Math.Clamp((value - row.Center) / half, -Reach, Reach) / Reach);
        return Svg(
            Words(row),
            Line(At(row.Center - 2 * half), At(row.Center + 2 * half), Tone.Neutral, 0.8),
            Bar(At(row.Population.Lower), At(row.Population.Upper), "#c9cfd2"),
            Tick(At(row.Center)),
            Math.Abs(row.Value - row.Center) > Reach * half
                ? Arrow(At(row.Value), row.Value > row.Center ? -9 : 9)
                : Line(At(row.Uncertainty.Lower), At(row.Uncertainty.Upper), Tone.Strong, 1.6) + Disc(At(row.Value)));
    }

    /// <summary>What a strip shows, in words.</summary>
    public static string Words(StripRow row) =>
        $"{row.Name}: {Digits.Fixed(row.Value, row.Decimals)}{(row.Unit.Length == 0 ? "" : " " + row.Unit)}, series {Digits.Fixed(row.Population.Lower, row.Decimals)} to {Digits.Fixed(row.Population.Upper, row.Decimals)}";

    /// <summary>A value with its uncertainty on a scale from zero, beside published figures as ticks.</summary>
    public static string BesideFigures(IndexValue index, IReadOnlyList<double> figures)
    {
        var spread = index.StandardDeviation ?? 0;
        var end = 1.15 * figures.Append(index.Value + spread).Max();
        double At(double value) => Width * Math.Clamp(value / end, 0, 1);
        return Svg(
            $"{index.Name} {PageWords.Value(index)} on a scale from 0 to {Digits.Of(end)}; ticks at {string.Join(" and ", figures.Select(figure => Digits.Of(figure)))}",
            Line(0, Width, Tone.Neutral, 0.8), string.Concat(figures.Select(figure => Tick(At(figure)))),
            Line(At(index.Value - spread), At(index.Value + spread), Tone.Strong, 1.6) + Disc(At(index.Value)));
    }

    /// <summary>Two parts behind each other, the first dark and the second light, and the uncertainty of their sum.</summary>
    public static string Parts(IndexValue first, IndexValue second, IndexValue sum)
    {
        var spread = sum.StandardDeviation ?? 0;
        var end = 1.1 * Math.Max(sum.Value + spread, 1e-9);
        double At(double value) => Width * Math.Clamp(value / end, 0, 1);
        return Svg(
            $"{PageWords.Number(first)} dark and {PageWords.Number(second)} light, together {PageWords.Number(sum)}",
            Bar(0, At(first.Value), ChartColors.Of(Tone.Middle)), Bar(At(first.Value), At(sum.Value), "#c9cfd2"), Line(At(sum.Value - spread), At(sum.Value + spread), Tone.Strong, 1.6), Tick(At(sum.Value)));
    }

    private static string Svg(string words, params IEnumerable<string> shapes) =>
        $"<svg viewBox=\"0 0 {N(Width)} {N(Height)}\" width=\"{N(Width)}\" height=\"{N(Height)}\" role=\"img\" aria-label=\"{WebUtility.HtmlEncode(words)}\">{string.Concat(shapes)}</svg>";

    private static string Line(double from, double to, Tone tone, double weight) =>
        Invariant($"<path d=\"M{N(from)} {N(Middle)}H{N(to)}\" stroke=\"{ChartColors.Of(tone)}\" stroke-width=\"{weight}\"/>");

    private static string Bar(double from, double to, string color) =>
        $"<rect x=\"{N(from)}\" y=\"{N(Middle - 4)}\" width=\"{N(Math.Max(0, to - from))}\" height=\"8\" fill=\"{color}\"/>";

    private static string Tick(double at) => $"<path d=\"M{N(at)} 2V{N(Height - 2)}\" stroke=\"{ChartColors.Ink}\" stroke-width=\"1.2\"/>";

    private static string Disc(double at) => $"<circle cx=\"{N(at)}\" cy=\"{N(Middle)}\" r=\"4.2\" fill=\"{ChartColors.Of(Tone.Strong)}\"/>";

    private static string Arrow(double at, double side) => $"<path d=\"M{N(at)} {N(Middle)}l{N(side)} -5v10z\" fill=\"{ChartColors.Of(Tone.Strong)}\"/>";

    private static string N(double value) => (Math.Round(value, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);
}
