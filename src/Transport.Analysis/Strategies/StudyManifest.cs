using System.Collections.Immutable;
using System.Text.Json;

namespace Transport.Analysis;

/// <summary>What a study's folder holds: the design in lines, and the finished parts with their seeds.</summary>
public sealed record StudyManifest
{
    /// <summary>Name of the file.</summary>
    public const string FileName = "manifest.json";

    private static readonly JsonSerializerOptions Json = new() { WriteIndented = true, NewLine = "\n", PropertyNamingPolicy = JsonNamingPolicy.CamelCase };

    /// <summary>The design: two studies with the same lines are one.</summary>
    public required ImmutableArray<string> Design { get; init; }

    /// <summary>How many parts there will be.</summary>
    public required int Parts { get; init; }

    /// <summary>The parts that are done, in order.</summary>
    public required ImmutableArray<StudyPart> Done { get; init; }

    /// <summary>The manifest of a folder; null where there is none.</summary>
    /// <exception cref="InvalidDataException">There is one that cannot be read.</exception>
    public static StudyManifest? Read(string directory)
    {
        ArgumentNullException.ThrowIfNull(directory);
        var path = Path.Combine(directory, FileName);
        if (!File.Exists(path))
        {
            return null;
        }

        try
        {
            return JsonSerializer.Deserialize<StudyManifest>(File.ReadAllText(path), Json) is { Design.IsDefault: false, Done.IsDefault: false } manifest
                ? manifest
                : throw new JsonException("the design or the parts are missing.");
        }
        catch (JsonException failure)
        {
            throw new InvalidDataException($"{FileName} cannot be read as a study's manifest: {failure.Message} Name another folder, or remove this one.", failure);
        }
    }

    internal void Write(string directory) => WholeFile.Write(Path.Combine(directory, FileName), stream => JsonSerializer.Serialize(stream, this, Json));
}
