namespace Transport.Notebooks;

/// <summary>How every command says that it did nothing, and why: all problems at once, each with its place.</summary>
internal static class Refusal
{
    /// <summary>What was found in files.</summary>
    /// <returns>The exit code.</returns>
    public static int Of(IReadOnlyCollection<Finding> problems, TextWriter log)
    {
        log.WriteLine($"error: {(problems.Count == 1 ? "1 problem" : $"{problems.Count} problems")}, nothing was written");
        foreach (var problem in problems)
            log.WriteLine($"  {problem}");
        return NotebookRunException.CellFailed;
    }

    /// <summary>Everything that stands between a sheet and a test; none where it holds one.</summary>
    public static IReadOnlyList<Finding> WhyNoTest(SampleSheet sheet) => WhyNot(() => sheet.ToTest());

    /// <summary>Everything that stands between a sheet and a collection; none where it holds one.</summary>
    public static IReadOnlyList<Finding> WhyNoCollection(SampleSheet sheet) => WhyNot(() => sheet.ToCollection());

    private static IReadOnlyList<Finding> WhyNot(Action read)
    {
        try
        {
            read();
            return [];
        }
        catch (SampleSheetException refused)
        {
            return refused.Errors;
        }
    }

    /// <summary>A request that makes no sense, or a result that cannot be written.</summary>
    /// <returns>The exit code.</returns>
    public static int Of(NotebookRunException problem, TextWriter log)
    {
        log.WriteLine($"error: {problem.Message}");
        return problem.ExitCode;
    }

    /// <summary>What the library cannot do with what it was given, without the names that only its callers know.</summary>
    /// <returns>The exit code.</returns>
    public static int Of(Exception problem, TextWriter log)
    {
        log.WriteLine($"error: {problem.Message.Split(" (Parameter")[0]} Nothing was written.");
        return NotebookRunException.BadRequest;
    }
}
