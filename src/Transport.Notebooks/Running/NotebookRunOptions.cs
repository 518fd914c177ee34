namespace Transport.Notebooks;

/// <summary>How a notebook is run.</summary>
internal sealed record NotebookRunOptions
{
    /// <summary>Parameters to set, each <c>name=value</c>.</summary>
    public IReadOnlyList<string> Settings { get; init; } = [];

    /// <summary>Where the executed notebook and its page go; made if absent.</summary>
    public string OutputDirectory { get; init; } = "out";

    /// <summary>Hears of each cell. Must not be the console a cell writes to: the kernel captures that.</summary>
    public TextWriter Progress { get; init; } = TextWriter.Null;
}
