using System.Reflection;
using System.Text.Json;
using static System.FormattableString;

namespace Transport;

/// <summary>A clinic's own limits and class borders, from one file with a name and a version that pages print.</summary>
/// <remarks>What the file does not mention stays as shipped. The format is in docs/how-to/local-protocol.md.</remarks>
public sealed record LocalProtocol
{
    private LocalProtocol(string name, string version, MembraneThresholds thresholds, CategoryCuts? cuts, IReadOnlyList<Finding> findings) =>
        (Name, Version, Thresholds, Cuts, Findings) = (name, version, thresholds with { Name = $"{name}, version {version}" }, cuts, findings);

    /// <summary>The protocol's name.</summary>
    public string Name { get; }

    /// <summary>Its version.</summary>
    public string Version { get; }

    /// <summary>The shipped limits with the file's in their place.</summary>
    public MembraneThresholds Thresholds { get; }

    /// <summary>Borders of D/P creatinine; null where the file gives none.</summary>
    public CategoryCuts? Cuts { get; }

    /// <summary>The part on record books, whose table is not known here; null where the file has none.</summary>
    internal JsonElement? Nights { get; private init; }

    /// <summary>Everything wrong with the file but its part on record books. A limit that has an error stays as shipped.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Whether an error keeps part of the file from being used.</summary>
    public bool HasErrors => Findings.Any(finding => finding.Severity == Severity.Error);

    /// <summary>The choices as they ship, with this protocol's limits and borders.</summary>
    public EquilibrationIndicesOptions ToOptions() => EquilibrationIndicesOptions.Default with { Thresholds = Thresholds, Cuts = Cuts };

    /// <summary>Reads a file.</summary>
    /// <exception cref="IOException">The file cannot be opened; its content never makes this throw.</exception>
    public static LocalProtocol Read(string path)
    {
        using var stream = File.OpenRead(path);
        return Read(stream);
    }

    /// <summary>Reads a protocol from a stream.</summary>
    /// <exception cref="IOException">The stream fails; its content never makes this throw.</exception>
    public static LocalProtocol Read(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        var findings = new List<Finding>();
        JsonDocument document;
        try
        {
            document = JsonDocument.Parse(stream, new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
        }
        catch (JsonException problem)
        {
            findings.Add(new(Severity.Error, "protocol-unreadable", "The file cannot be read as JSON from this line on: a bracket, a comma or a quotation mark is missing there or before; the shipped limits are used.") { Row = (int?)problem.LineNumber + 1 });
            return new("unreadable protocol", "unknown", MembraneThresholds.Default, null, findings);
        }

        using (document)
        {
            var root = document.RootElement;
            var (name, version) = (Text(root, "name"), Text(root, "version"));
            if (name is null || version is null)
            {
                findings.Add(new(Severity.Error, "protocol-unnamed", "The protocol needs a name and a version, since pages print both.")
                {
                    Field = name is null && version is null ? "name, version" : name is null ? "name" : "version",
                    Expected = "text",
                });
            }

            findings.AddRange(Strange(root));

            var source = $"{name ?? "local protocol"}, version {version ?? "unknown"}";
            var thresholds = Part(root, "limits") is { } limits ? Over(new MembraneThresholds(), limits, source, findings) : MembraneThresholds.Default;
            var cuts = Part(root, "creatinineBorders") is { } borders ? Borders(borders, source, findings) : null;
            return new(name ?? "unnamed protocol", version ?? "unknown", thresholds, cuts, findings) { Nights = Part(root, "nights")?.Clone() };
        }
    }

    /// <summary>Puts the file's values in the place of those of a fresh table of limits.</summary>
    internal T Over<T>(T shipped, JsonElement part, List<Finding> findings)
        where T : class => Over(shipped, part, $"{Name}, version {Version}", findings);

    private static T Over<T>(T shipped, JsonElement part, string source, List<Finding> findings)
        where T : class
    {
        var limits = typeof(T).GetProperties().Where(property => property.PropertyType == typeof(Threshold))
            .ToDictionary(property => JsonNamingPolicy.CamelCase.ConvertName(property.Name));
        foreach (var limit in part.EnumerateObject())
        {
            if (!limits.TryGetValue(limit.Name, out var property))
            {
                findings.Add(new(Severity.Error, "protocol-unknown-limit", "There is no limit of this name; it is left out.") { Field = limit.Name });
                continue;
            }

            var before = (Threshold)property.GetValue(shipped)!;
            var isUnitRight = limit.Value.ValueKind != JsonValueKind.Object || (Text(limit.Value, "unit") ?? "") == before.Unit;
            if (!isUnitRight)
            {
                findings.Add(new(Severity.Error, "protocol-wrong-unit", "The limit has another unit than the one it is compared in; the shipped one is used.")
                {
                    Field = limit.Name,
                    Found = Text(limit.Value, "unit") ?? "no unit",
                    Expected = before.Unit.Length == 0 ? "no unit" : before.Unit,
                });
            }

            if (Number(limit.Value, "value") is not { } value || value < 0)
            {
                findings.Add(new(Severity.Error, "protocol-bad-value", "A limit needs a value of zero or more; the shipped one is used.") { Field = limit.Name, Found = limit.Value.GetRawText(), Expected = Example(before) });
            }
            else if (isUnitRight)
            {
                try
                {
                    property.SetValue(shipped, new Threshold(value, before.Unit, Evidence.Choice, source));
                }
                catch (TargetInvocationException problem) when (problem.InnerException is ArgumentException refused)
                {
                    findings.Add(new(Severity.Error, "protocol-bad-value", $"{refused.Message.Split(" (Parameter")[0]} The shipped one is used.") { Field = limit.Name, Found = limit.Value.GetRawText() });
                }
            }
        }

        return shipped;
    }

    private static CategoryCuts? Borders(JsonElement borders, string source, List<Finding> findings)
    {
        if (Number(borders, "slow") is { } slow && Number(borders, "middle") is { } middle && Number(borders, "fast") is { } fast
            && slow > 0 && slow < middle && middle < fast && fast < 1)
        {
            return new(slow, middle, fast)
            {
                Name = "4-h D/P creatinine, " + source,
                IsFastBorderFast = borders.TryGetProperty("fastBorderIsFast", out var word) && word.ValueKind == JsonValueKind.True,
                Evidence = Evidence.Choice,
                Source = source,
            };
        }

        findings.Add(new(Severity.Error, "protocol-bad-value", "Borders need slow, middle and fast between 0 and 1, rising; those of 1987 are used.") { Field = "creatinineBorders", Found = borders.GetRawText(), Expected = """{ "slow": 0.50, "middle": 0.65, "fast": 0.81 }""" });
        return null;
    }

    // A limit as the file would write it.
    private static string Example(Threshold limit) =>
        limit.Unit.Length == 0 ? Invariant($$"""{ "value": {{limit.Value}} }""") : Invariant($$"""{ "value": {{limit.Value}}, "unit": "{{limit.Unit}}" }""");

    // What would be left out without a word, and the shipped limits used in its place.
    private static IEnumerable<Finding> Strange(JsonElement root)
    {
        string[] parts = ["limits", "creatinineBorders", "nights"];
        foreach (var property in root.ValueKind == JsonValueKind.Object ? root.EnumerateObject().AsEnumerable() : [])
        {
            if (!parts.Contains(property.Name) && property.Name is not ("name" or "version" or "remark"))
            {
                yield return new(Severity.Error, "protocol-unknown-limit", "There is no part of this name; it is left out.") { Field = property.Name, Expected = string.Join(", ", parts) };
            }
            else if (parts.Contains(property.Name) && property.Value.ValueKind != JsonValueKind.Object)
            {
                yield return new(Severity.Error, "protocol-bad-value", "This part is an object with a property for each limit; it is left out.") { Field = property.Name, Found = property.Value.GetRawText(), Expected = "{ … }" };
            }
        }
    }

    private static JsonElement? Part(JsonElement root, string name) =>
        root.ValueKind == JsonValueKind.Object && root.TryGetProperty(name, out var part) && part.ValueKind == JsonValueKind.Object ? part : null;

    private static string? Text(JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var text) && text.ValueKind == JsonValueKind.String
        && !string.IsNullOrWhiteSpace(text.GetString()) ? text.GetString() : null;

    private static double? Number(JsonElement element, string name) =>
        element.ValueKind == JsonValueKind.Object && element.TryGetProperty(name, out var number) && number.ValueKind == JsonValueKind.Number
        && number.TryGetDouble(out var value) && double.IsFinite(value) ? value : null;
}
