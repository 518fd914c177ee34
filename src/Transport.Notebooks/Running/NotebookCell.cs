using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>One cell of a notebook and, after a run, what it showed.</summary>
/// <param name="Id">Unique in its notebook (nbformat 4.5).</param>
/// <param name="Kind"><c>code</c>, <c>markdown</c> or <c>raw</c>.</param>
/// <param name="Source">The text, lines ended by a line feed.</param>
internal sealed record NotebookCell(string Id, string Kind, string Source)
{
    public IReadOnlyList<string> Tags { get; init; } = [];

    public int? ExecutionCount { get; init; }

    public IReadOnlyList<CellOutput> Outputs { get; init; } = [];

    /// <summary>The cell as it stood in the file: metadata and members that are none of our business are kept from here.</summary>
    public JsonObject File { get; init; } = [];

    public bool IsCode => Kind == "code";

    public static NotebookCell From(JsonObject file, string idIfAbsent) =>
        new(file["id"]?.GetValue<string>() ?? idIfAbsent, file["cell_type"]!.GetValue<string>(), TextOf(file["source"]))
        {
            Tags = file["metadata"]?["tags"] is JsonArray tags ? [.. tags.Select(tag => tag!.GetValue<string>())] : [],
            File = file,
        };

    public JsonObject ToJson()
    {
        var json = (JsonObject)File.DeepClone();
        var metadata = json["metadata"] as JsonObject ?? [];
        metadata.Remove("execution"); // a front end's stopwatch
        if (Tags.Count > 0)
            metadata["tags"] = new JsonArray([.. Tags.Select(tag => (JsonNode)tag)]);

        json["id"] = Id;
        json["cell_type"] = Kind;
        json["metadata"] = metadata.Parent is null ? metadata : metadata.DeepClone();
        json["source"] = Lines(Source);
        if (IsCode)
        {
            json["execution_count"] = ExecutionCount;
            json["outputs"] = new JsonArray([.. Outputs.Select(ToJson)]);
        }

        return json;
    }

    private JsonNode ToJson(CellOutput output)
    {
        if (output is CellOutput.Stream stream)
            return new JsonObject { ["output_type"] = "stream", ["name"] = stream.Name, ["text"] = Lines(stream.Text) };

        var display = (CellOutput.Display)output;
        var data = new JsonObject();
        foreach (var (mediaType, text) in display.Forms)
            data[mediaType] = MediaType.IsJson(mediaType) ? JsonNode.Parse(text) : Lines(text);

        var json = new JsonObject { ["data"] = data, ["metadata"] = new JsonObject() };
        json["output_type"] = display.IsResult ? "execute_result" : "display_data";
        if (display.IsResult)
            json["execution_count"] = ExecutionCount;
        return json;
    }

    // nbformat's "multiline string": one array item a line, each but the last with its line feed.
    private static JsonArray Lines(string text)
    {
        var lines = new JsonArray();
        for (var start = 0; start < text.Length;)
        {
            var end = text.IndexOf('\n', start) is var feed and >= 0 ? feed + 1 : text.Length;
            lines.Add((JsonNode)text[start..end]);
            start = end;
        }

        return lines;
    }

    private static string TextOf(JsonNode? source) => (source switch
    {
        JsonArray lines => string.Concat(lines.Select(line => line!.GetValue<string>())),
        null => "",
        _ => source.GetValue<string>(),
    }).ReplaceLineEndings("\n");
}
