using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Transport.Reporting;

/// <summary>Turns the SVG that OxyPlot writes into a smaller one: no invisible shapes, plain attributes, one clip path, short numbers.</summary>
internal static partial class SvgMarkup
{
    public static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    /// <summary>From the middle, or from the top, of a 12 pixel letter to its baseline.</summary>
    private const string MiddleShift = "4", HangingShift = "9";

    /// <summary>What is drawn in the plot area is clipped to <paramref name="clipId"/>, which the caller defines.</summary>
    public static IEnumerable<XElement> Reduce(string exported, string clipId)
    {
        var root = XDocument.Parse(exported).Root!;
        var panelWidth = Value(root, "width");
        var whole = root.Descendants(Svg + "clipPath")
            .Where(c => Value(c.Element(Svg + "rect")!, "width") >= panelWidth)
            .Select(c => $"url(#{c.Attribute("id")!.Value})")
            .ToHashSet();
        foreach (var group in root.Elements(Svg + "g"))
        {
            var isWhole = group.Attribute("clip-path") is not { } clip || whole.Contains(clip.Value);
            var shapes = group.Elements().Select(Reduce).OfType<XElement>().ToArray();
            if (shapes.Length == 0) continue;
            yield return new XElement(Svg + "g", isWhole ? null : new XAttribute("clip-path", $"url(#{clipId})"), shapes);
        }
    }

    /// <summary>A coordinate with one digit after the point, which is finer than a screen.</summary>
    public static string Number(double value) => (Math.Round(value, 1) + 0.0).ToString("0.#", CultureInfo.InvariantCulture);

    private static XElement? Reduce(XElement shape)
    {
        var attributes = shape.Attributes().Where(a => a.Name != "style").ToDictionary(a => a.Name.LocalName, a => a.Value);
        foreach (var declaration in (shape.Attribute("style")?.Value ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries))
        {
            var parts = declaration.Split(':');
            attributes[parts[0].Trim()] = parts[1].Trim();
        }

        if (Is(attributes, "stroke-width", "0")) attributes["stroke"] = "none";
        if (Is(attributes, "fill-opacity", "0")) attributes["fill"] = "none";
        if (Is(attributes, "stroke-opacity", "0")) attributes["stroke"] = "none";
        var isText = shape.Name == Svg + "text";
        if (!isText && Is(attributes, "fill", "none") && (!attributes.TryGetValue("stroke", out var stroke) || stroke == "none")) return null;

        if (isText)
        {
            // Font, size and weight are those of the whole figure.
            foreach (var inherited in new[] { "font-family", "font-size", "font-weight" }) attributes.Remove(inherited);
            if (Is(attributes, "text-anchor", "start")) attributes.Remove("text-anchor");
            // Not every reader knows dominant baselines; a shift along the text's own axis does the same.
            if (attributes.Remove("dominant-baseline", out var baseline) && baseline != "baseline")
                attributes["dy"] = baseline == "middle" ? MiddleShift : HangingShift;
        }
        if (Is(attributes, "stroke", "none")) Drop(attributes, "stroke", "stroke-width", "stroke-linejoin", "stroke-opacity");
        if (Is(attributes, "stroke-width", "1")) attributes.Remove("stroke-width");
        if (Is(attributes, "shape-rendering", "geometricPrecision")) attributes.Remove("shape-rendering");
        return new XElement(shape.Name, attributes.Select(a => new XAttribute(a.Key, Short(a.Key, a.Value))), isText ? shape.Value : null);
    }

    private static string Short(string name, string value) => name switch
    {
        "fill" or "stroke" => Rgb().Replace(value, m => Hex(m.Groups[1].Value) is { } r ? $"#{r}{Hex(m.Groups[2].Value)}{Hex(m.Groups[3].Value)}" : value),
        "fill-opacity" or "stroke-opacity" => Parse(value).ToString("0.##", CultureInfo.InvariantCulture),
        "points" or "transform" or "x" or "y" or "width" or "height" or "cx" or "cy" => Decimals().Replace(value, m => Number(Parse(m.Value))),
        _ => value,
    };

    private static string Hex(string number) => int.Parse(number, CultureInfo.InvariantCulture).ToString("x2", CultureInfo.InvariantCulture);

    private static double Parse(string number) => double.Parse(number, CultureInfo.InvariantCulture);

    private static double Value(XElement element, string attribute) => Parse(element.Attribute(attribute)!.Value);

    private static bool Is(Dictionary<string, string> attributes, string name, string value) =>
        attributes.TryGetValue(name, out var found) && found == value;

    private static void Drop(Dictionary<string, string> attributes, params ReadOnlySpan<string> names)
    {
        foreach (var name in names) attributes.Remove(name);
    }

    [GeneratedRegex(@"rgb\((\d+),(\d+),(\d+)\)")]
    private static partial Regex Rgb();

    [GeneratedRegex(@"-?\d+\.\d+")]
    private static partial Regex Decimals();
}
