using System.CommandLine;

namespace Transport.Notebooks;

/// <summary>The command that reviews a record book beside a test and writes one page.</summary>
internal static class ReviewCommandLine
{
    /// <param name="terminal">Where the name of the written page is said.</param>
    /// <param name="log">Where problems and findings are said.</param>
    public static Command Of(TextWriter terminal, TextWriter log)
    {
        var book = new Argument<string>("book") { Description = "The record book (.csv)." };
        var sheet = new Option<string>("--sheet") { Description = "The sample sheet of the patient's test (.csv).", HelpName = "file", Required = true };
        var protocol = new Option<string?>("--protocol") { Description = "A file with the clinic's own limits.", HelpName = "file" };
        var output = new Option<string>("--out") { Description = "The page to write.", HelpName = "file", DefaultValueFactory = _ => "nights.html" };
        var command = new Command("review", "Sets a record book beside what the test's membrane lets expect, and writes one page for a clinic visit.") { book, sheet, protocol, output };
        command.SetAction((arguments, cancellation) => Task.FromResult(Run(
            arguments.GetRequiredValue(book), arguments.GetRequiredValue(sheet), arguments.GetValue(protocol), arguments.GetRequiredValue(output), terminal, log, cancellation)));
        return command;
    }

    private static int Run(
        string bookPath, string sheetPath, string? protocolPath, string output, TextWriter terminal, TextWriter log, CancellationToken cancellation)
    {
        try
        {
            if (new[] { bookPath, sheetPath, output }.Any(string.IsNullOrWhiteSpace))
                throw new NotebookRunException(NotebookRunException.BadRequest, "The name of a file is empty.");

            var sheet = SampleSheet.Read(sheetPath);
            var book = RecordBook.Read(bookPath);
            List<Finding> problems = [.. Refusal.WhyNoTest(sheet)];
            if (book.Nights.Count == 0 && book.RowsInDoubt.Count == 0)
                problems.AddRange(book.Findings.Where(finding => finding.Severity == Severity.Error));
            var protocol = ProtocolFile.Read(protocolPath, problems);
            if (problems.Count > 0)
                return Refusal.Of(problems, log);

            var test = sheet.ToTest();
            var fit = MembraneFit.Run(test);
            if (fit.Status != FitStatus.Converged)
                log.WriteLine($"read with care: {fit.Summary}");

            var limits = protocol is null ? ReviewLimits.Default : ReviewLimits.From(protocol, out _);
            var review = RecordReview.Run(
                test.Patient, MembraneSampling.Run(fit).ToEnsemble(), book, new() { Tested = test.Solution, Limits = limits }, new RunControl { Cancellation = cancellation });
            StagedFiles.Write(output, RecordPage.Of(review, test.Date, sheet, fit, EquilibrationIndices.Of(test, protocol?.ToOptions() ?? EquilibrationIndicesOptions.Default)));
            foreach (var finding in sheet.Findings.Concat(book.Findings).Concat(review.Findings))
                log.WriteLine(finding);
            terminal.WriteLine(output);
            return 0;
        }
        catch (NotebookRunException problem)
        {
            return Refusal.Of(problem, log);
        }
        catch (Exception problem) when (problem is ArgumentException or RegimenException or IntegrationException or InvalidOperationException)
        {
            return Refusal.Of(problem, log);
        }
        catch (OperationCanceledException)
        {
            log.WriteLine("\ncancelled, nothing was written");
            return 130;
        }
    }
}
