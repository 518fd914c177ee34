namespace Transport.Notebooks;

/// <summary>A notebook could not be run: a message for its reader and the exit code that goes with it.</summary>
internal sealed class NotebookRunException(int exitCode, string message) : Exception(message)
{
    /// <summary>A cell stopped with an error.</summary>
    public const int CellFailed = 1;

    /// <summary>What was asked for cannot be run: a bad file, an unknown parameter.</summary>
    public const int BadRequest = 2;

    public int ExitCode { get; } = exitCode;
}
