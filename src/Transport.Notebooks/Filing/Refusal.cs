namespace Transport.Notebooks;

/// <summary>How every command says that it did nothing, and why: all problems at once, each with its place.</summary>
internal static class Refusal
{
    /// <summary>What was found in files.</summary>
    /// <returns>The exit code.</returns>
    public static int Of(IEnumerable<Finding> found, TextWriter log)
    {
        // A file that was given for two things is read twice.
        var problems = found.Distinct().ToList();
        log.WriteLine($"error: {(problems.Count == 1 ? "1 problem" : $"{problems.Count} problems")}, nothing was written");
        foreach (var problem in problems)
            log.WriteLine($"  {problem}");
        return NotebookRunException.CellFailed;
    }

    /// <summary>A request that makes no sense, and what was found in files besides.</summary>
    /// <param name="requests">What is wrong with the request, a sentence each.</param>
    /// <param name="problems">What was found in files.</param>
    /// <param name="log">Where it is said.</param>
    /// <returns>The exit code.</returns>
    public static int Of(IReadOnlyCollection<string> requests, IReadOnlyCollection<Finding> problems, TextWriter log)
    {
        foreach (var request in requests)
            log.WriteLine($"error: {request}");
        var code = problems.Count > 0 ? Of(problems, log) : NotebookRunException.BadRequest;
        return requests.Count > 0 ? NotebookRunException.BadRequest : code;
    }

    /// <summary>The sentence that refuses a file that is given more than once; null where none is.</summary>
    public static string? WhyTwice(IEnumerable<string> paths) => paths.Where(path => path.Length > 0).Select(Path.GetFullPath).GroupBy(path => path).FirstOrDefault(group => group.Count() > 1) is { } twice
        ? $"{Path.GetFileName(twice.Key)} is given twice."
        : null;

    /// <summary>Everything that stands between a sheet and a test; none where it holds one.</summary>
    public static IReadOnlyList<Finding> WhyNoTest(SampleSheet sheet) => WhyNot(sheet, () => sheet.ToTest());

    /// <summary>Everything that stands between a sheet and a collection; none where it holds one.</summary>
    public static IReadOnlyList<Finding> WhyNoCollection(SampleSheet sheet) => WhyNot(sheet, () => sheet.ToCollection());

    /// <summary>The errors of a file with the warnings that explain one: a word that was left aside, a number in the wrong column. None where there is no error.</summary>
    public static IReadOnlyList<Finding> Why(IReadOnlyCollection<Finding> findings) => !findings.Any(finding => finding.Severity == Severity.Error) ? []
        : [.. findings.Where(finding => finding.Severity == Severity.Error || finding.Code == "regimen-item-unknown" || finding.Code == SampleSheetCodes.TimeOfFact.Code)];

    private static IReadOnlyList<Finding> WhyNot(SampleSheet sheet, Action read)
    {
        try
        {
            read();
            return [];
        }
        catch (SampleSheetException refused)
        {
            return [.. Why(sheet.Findings).Union(refused.Errors)];
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
