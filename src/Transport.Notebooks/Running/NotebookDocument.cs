using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>A notebook file in the open nbformat 4: read tolerantly, written in one canonical form (4.5, sorted keys).</summary>
internal sealed record NotebookDocument(JsonObject Metadata, IReadOnlyList<NotebookCell> Cells)
{
    private static readonly JsonWriterOptions Layout = new()
    {
        Indented = true,
        IndentSize = 1,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>Reads a notebook.</summary>
    /// <exception cref="NotebookRunException">It is missing, not a notebook, or empty; the message says which.</exception>
    public static NotebookDocument Read(string path)
    {
        NotebookRunException Bad(string problem) => new(NotebookRunException.BadRequest, $"{path} {problem}.");

        if (!string.Equals(Path.GetExtension(path), ".ipynb", StringComparison.OrdinalIgnoreCase))
            throw Bad("is not named like a notebook: a name that ends in .ipynb is expected");
        if (!File.Exists(path))
            throw Bad("does not exist");

        try
        {
            if (JsonNode.Parse(File.ReadAllText(path)) is not JsonObject file)
                throw Bad("is not a notebook: a JSON object is expected");
            if (file["nbformat"]?.GetValue<int>() is var format and not 4)
                throw Bad($"is not a notebook of format 4 (nbformat: {format?.ToString() ?? "missing"})");

            var cells = CellsOf(file["cells"] as JsonArray ?? []);
            if (!cells.Any(cell => cell.IsCode))
                throw Bad("has no code cells: there is nothing to run");
            return new NotebookDocument(file["metadata"] as JsonObject ?? [], cells);
        }
        catch (JsonException e)
        {
            throw Bad($"is not JSON (line {e.LineNumber + 1})");
        }
        catch (Exception e) when (e is InvalidOperationException or NullReferenceException or FormatException or InvalidCastException)
        {
            throw Bad("is JSON but not a notebook: a cell, its source or its tags are of an unexpected kind");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw Bad("cannot be opened");
        }
    }

    /// <summary>The file's text: the same document gives the same bytes.</summary>
    public string ToJson()
    {
        var metadata = (JsonObject)Metadata.DeepClone();
        metadata["kernelspec"] = new JsonObject { ["name"] = "transport", ["display_name"] = "Transport (C#)", ["language"] = "C#" };
        metadata["language_info"] = new JsonObject
        {
            ["name"] = "C#",
            ["file_extension"] = ".cs",
            ["mimetype"] = "text/x-csharp",
            ["pygments_lexer"] = "csharp",
        };

        var file = new JsonObject
        {
            ["cells"] = new JsonArray([.. Cells.Select(cell => cell.ToJson())]),
            ["metadata"] = metadata,
            ["nbformat"] = 4,
            ["nbformat_minor"] = 5,
        };

        using var bytes = new MemoryStream();
        using (var writer = new Utf8JsonWriter(bytes, Layout))
            WriteSorted(writer, file);
        return Encoding.UTF8.GetString(bytes.ToArray()) + "\n";
    }

    private static List<NotebookCell> CellsOf(JsonArray file)
    {
        var taken = file.Select(cell => cell!["id"]?.GetValue<string>()).OfType<string>().ToHashSet(StringComparer.Ordinal);
        var cells = new List<NotebookCell>();
        foreach (var cell in file)
        {
            var id = $"cell-{cells.Count + 1}";
            while (taken.Contains(id))
                id += "-";
            cells.Add(NotebookCell.From((JsonObject)cell!, id));
        }

        return cells;
    }

    private static void WriteSorted(Utf8JsonWriter writer, JsonNode? node)
    {
        switch (node)
        {
            case JsonObject members:
                writer.WriteStartObject();
                foreach (var (name, value) in members.OrderBy(member => member.Key, StringComparer.Ordinal))
                {
                    writer.WritePropertyName(name);
                    WriteSorted(writer, value);
                }

                writer.WriteEndObject();
                break;
            case JsonArray { Count: > 0 } numbers when numbers.All(item => item?.GetValueKind() == JsonValueKind.Number):
                writer.WriteRawValue(numbers.ToJsonString()); // a curve is one line, not hundreds
                break;
            case JsonArray items:
                writer.WriteStartArray();
                foreach (var item in items)
                    WriteSorted(writer, item);
                writer.WriteEndArray();
                break;
            case null:
                writer.WriteNullValue();
                break;
            default:
                node.WriteTo(writer);
                break;
        }
    }
}
