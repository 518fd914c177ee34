using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>The same statements as JSON: a property for each item, named in one word with its unit behind it.</summary>
internal static partial class RegimenJson
{
    private static readonly ImmutableDictionary<string, string> Units = new Dictionary<string, string>
    {
        [" milliliters per minute"] = "mL/min",
        [" millimoles per liter"] = "mmol/L",
        [" milliliters"] = "mL",
        [" liters"] = "L",
        [" minutes"] = "min",
        [" hours"] = "h",
        [" percent"] = "%",
    }.ToImmutableDictionary();

    // Lists of objects: their property, and the item that each object is.
    private static readonly (string Property, string Item)[] Lists =
    [
        ("solutions", RegimenItem.Solution),
        ("night", RegimenItem.NightExchange),
        ("day", RegimenItem.DayExchange),
        ("byHand", RegimenItem.HandExchange),
        ("bags", RegimenItem.Bag),
        ("dayBags", RegimenItem.DayBag),
    ];

    public static List<RegimenRow> Read(string text, List<Finding> findings)
    {
        List<RegimenRow> rows = [];
        try
        {
            using var document = JsonDocument.Parse(text, new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object)
            {
                findings.Add(new(Severity.Error, "regimen-file-unreadable", "The file has to hold one object: a regimen, or \"regimens\" and perhaps a \"week\".") { Found = root.ValueKind == JsonValueKind.Array ? "a list" : root.ToString(), Expected = "{ … }" });
                return rows;
            }

            if (root.TryGetProperty("regimens", out var regimens) && regimens.ValueKind == JsonValueKind.Array)
            {
                foreach (var (regimen, i) in regimens.EnumerateArray().Select((regimen, i) => (regimen, i)))
                {
                    Regimen(regimen, i + 1, regimens.GetArrayLength() == 1, rows, findings);
                }

                Week(root, rows, findings);
            }
            else
            {
                Regimen(root, 1, true, rows, findings);
                Week(root, rows, findings);
            }
        }
        catch (JsonException problem)
        {
            findings.Add(new(Severity.Error, "regimen-file-unreadable", "The file begins as JSON and cannot be read as it from this line on: a bracket, a comma or a quotation mark is missing there or before.") { Row = (int?)problem.LineNumber + 1 });
        }

        return rows;
    }

    public static string Write(IReadOnlyList<RegimenRow> rows)
    {
        using var bytes = new MemoryStream();
        using (var json = new Utf8JsonWriter(bytes, new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            var week = rows.Where(row => row.Item == RegimenItem.Week).ToList();
            json.WriteStartObject();
            json.WriteStartArray("regimens");
            foreach (var regimen in rows.Where(row => row.Item != RegimenItem.Week).GroupBy(row => row.Regimen))
            {
                json.WriteStartObject();
                if (regimen.Key.Length > 0)
                {
                    json.WriteString("name", regimen.Key);
                }

                foreach (var row in regimen.Where(row => !Lists.Any(list => IsIn(list.Item, row))))
                {
                    Property(json, row.Item, row.Value, row.Unit);
                }

                foreach (var (property, item) in Lists.Where(list => regimen.Any(row => IsIn(list.Item, row))))
                {
                    json.WriteStartArray(property);
                    foreach (var element in Elements(item, regimen))
                    {
                        Element(json, item, element);
                    }

                    json.WriteEndArray();
                }

                json.WriteEndObject();
            }

            json.WriteEndArray();
            if (week.Count > 0)
            {
                json.WriteStartArray("week");
                foreach (var day in week[0].Value.Split(' '))
                {
                    json.WriteStringValue(day == RegimenDraft.NoTreatment ? null : day);
                }

                json.WriteEndArray();
            }

            json.WriteEndObject();
        }

        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static bool IsIn(string item, RegimenRow row) => row.Item == item || (item == RegimenItem.Solution && row.Item.StartsWith("solution ", StringComparison.Ordinal));

    // Rows that become one object: each by itself, those of a solution together.
    private static IEnumerable<RegimenRow[]> Elements(string item, IEnumerable<RegimenRow> rows) => item == RegimenItem.Solution
        ? rows.Where(row => IsIn(item, row)).GroupBy(row => row.Solution).Select(group => group.ToArray())
        : rows.Where(row => row.Item == item).Select(row => new[] { row });

    private static void Element(Utf8JsonWriter json, string item, RegimenRow[] rows)
    {
        json.WriteStartObject();
        if (item == RegimenItem.Solution)
        {
            json.WriteString("name", rows[0].Solution);
            foreach (var row in rows)
            {
                Property(json, row.Item == item ? "glucose" : row.Item["solution ".Length..], row.Value, row.Unit);
            }
        }
        else
        {
            var row = rows[0];
            Property(json, item is RegimenItem.Bag or RegimenItem.DayBag ? "volume" : "fill", row.Value, row.Unit);
            foreach (var (name, value, unit) in new[]
            {
                ("solution", row.Solution, ""), ("clock", row.Clock, ""), ("dwell", row.Dwell, "min"), ("drain", row.Drain, "mL"), ("expected ultrafiltration", row.Expected, "mL"),
            })
            {
                if (value.Length > 0)
                {
                    Property(json, name, value, unit);
                }
            }
        }

        json.WriteEndObject();
    }

    private static void Property(Utf8JsonWriter json, string item, string value, string unit)
    {
        var words = item + (Units.FirstOrDefault(known => known.Value == unit).Key ?? "");
        var name = SpaceAndLetter().Replace(words, match => match.Groups["letter"].Value.ToUpperInvariant());
        if (unit.Length > 0 || RegimenItem.Of(item)?.Kind is RegimenValueKind.Count or RegimenValueKind.Share)
        {
            json.WritePropertyName(name);
            json.WriteRawValue(value);
        }
        else
        {
            json.WriteString(name, value);
        }
    }

    private static void Week(JsonElement root, List<RegimenRow> rows, List<Finding> findings)
    {
        if (!root.TryGetProperty("week", out var week))
        {
            return;
        }

        if (week.ValueKind != JsonValueKind.Array)
        {
            findings.Add(new(Severity.Error, "regimen-value-bad", "A week is a list of names, with null on a day without treatment.") { Field = "week", Found = week.ToString(), Expected = "[ \"name\", null, … ]" });
            return;
        }

        rows.Add(new("", RegimenItem.Week, string.Join(' ', week.EnumerateArray().Select(day => day.ValueKind == JsonValueKind.Null ? RegimenDraft.NoTreatment : day.ToString())), ""));
    }

    private static void Regimen(JsonElement regimen, int number, bool isOnly, List<RegimenRow> rows, List<Finding> findings)
    {
        if (regimen.ValueKind != JsonValueKind.Object)
        {
            findings.Add(new(Severity.Error, "regimen-value-bad", "A regimen is an object with properties.") { Field = $"regimens, number {number}", Found = regimen.ToString(), Expected = "{ … }" });
            return;
        }

        var name = regimen.TryGetProperty("name", out var own) ? own.ToString() : isOnly ? "" : number.ToString(CultureInfo.InvariantCulture);
        foreach (var property in regimen.EnumerateObject().Where(property => property.Name is not ("name" or "week")))
        {
            if (Lists.FirstOrDefault(list => list.Property == property.Name).Item is { } item && property.Value.ValueKind is JsonValueKind.Array or JsonValueKind.Object)
            {
                // One exchange may stand without the list's brackets.
                JsonElement[] elements = property.Value.ValueKind == JsonValueKind.Array ? [.. property.Value.EnumerateArray()] : [property.Value];
                foreach (var (element, i) in elements.Select((element, i) => (element, i)))
                {
                    var read = item == RegimenItem.Solution ? SolutionRows(name, element) : [RowOf(name, item, element)];
                    rows.AddRange(read.Select(row => row with { Number = elements.Length > 1 ? i + 1 : null }));
                }
            }
            else if (property.Value.ValueKind == JsonValueKind.Object)
            {
                rows.Add(RowOf(name, ItemAndUnit(property.Name).Item, property.Value));
            }
            else
            {
                var (word, unit) = ItemAndUnit(property.Name);
                rows.Add(new(name, word, property.Value.ToString(), unit));
            }
        }
    }

    private static RegimenRow RowOf(string regimen, string item, JsonElement element)
    {
        var row = new RegimenRow(regimen, item, "", "");
        if (element.ValueKind != JsonValueKind.Object)
        {
            return row with { Value = element.ToString() };
        }

        foreach (var property in element.EnumerateObject())
        {
            var ((word, unit), value) = (ItemAndUnit(property.Name), property.Value.ToString());
            row = word switch
            {
                "fill" or "volume" => row with { Value = value, Unit = unit },
                "solution" => row with { Solution = value },
                "clock" => row with { Clock = value },
                "dwell" => row with { Dwell = WithUnit(value, unit) },
                "drain" => row with { Drain = WithUnit(value, unit) },
                "expected ultrafiltration" => row with { Expected = WithUnit(value, unit) },
                _ => row with { Item = $"{item} {word}" },
            };
        }

        return row;
    }

    private static IEnumerable<RegimenRow> SolutionRows(string regimen, JsonElement element)
    {
        if (element.ValueKind != JsonValueKind.Object)
        {
            return [new(regimen, RegimenItem.Solution, element.ToString(), "")];
        }

        var name = element.TryGetProperty("name", out var own) ? own.ToString() : "";
        return element.EnumerateObject().Where(property => property.Name != "name").Select(property =>
        {
            var (word, unit) = ItemAndUnit(property.Name);
            return new RegimenRow(regimen, word == "glucose" ? RegimenItem.Solution : $"solution {word}", property.Value.ToString(), unit) { Solution = name };
        });
    }

    private static string WithUnit(string value, string unit) => unit.Length == 0 ? value : $"{value} {unit}";

    // "nightLengthMinutes" is the item "night length" in min.
    private static (string Item, string Unit) ItemAndUnit(string property)
    {
        var words = Capital().Replace(property, match => " " + match.Value.ToLowerInvariant()).Trim();
        foreach (var (ending, unit) in Units.OrderByDescending(known => known.Key.Length))
        {
            if (words.EndsWith(ending, StringComparison.Ordinal))
            {
                return (words[..^ending.Length], unit);
            }
        }

        return (words, "");
    }

    [GeneratedRegex("[A-Z]")]
    private static partial Regex Capital();

    [GeneratedRegex(" (?<letter>[a-z])")]
    private static partial Regex SpaceAndLetter();
}
