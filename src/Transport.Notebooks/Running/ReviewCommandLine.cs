using System.CommandLine;

namespace Transport.Notebooks;

/// <summary>The command that reviews a record book beside a test and writes one page.</summary>
internal static class ReviewCommandLine
{
    public static Command Of(TextWriter terminal, TextWriter log)
    {
        var book = new Argument<string>("book") { Description = "The record book (.csv)." };
        var sheet = new Option<string>("--sheet") { Description = "The sample sheet of the patient's test (.csv).", HelpName = "file", Required = true };
        var output = new Option<string>("--out") { Description = "The page to write.", HelpName = "file", DefaultValueFactory = _ => "nights.html" };
        var command = new Command("review", "Sets a record book beside what the test's membrane lets expect, and writes one page for a clinic visit.") { book, sheet, output };
        command.SetAction(arguments => Run(
            arguments.GetRequiredValue(book), arguments.GetRequiredValue(sheet), arguments.GetRequiredValue(output), terminal, log));
        return command;
    }

    private static int Run(string bookPath, string sheetPath, string output, TextWriter terminal, TextWriter log)
    {
        var sheet = SampleSheet.Read(sheetPath);
        var book = RecordBook.Read(bookPath);
        if (!sheet.TryToTest(out var test) || book.Nights.Count == 0)
        {
            foreach (var finding in sheet.Findings.Concat(book.Findings).Where(finding => finding.Severity == Severity.Error))
            {
                log.WriteLine($"error: {finding}");
            }

            log.WriteLine(test is null ? "error: the sheet holds no test that can be used; nothing was written" : "error: the book holds no night that can be used; nothing was written");
            return NotebookRunException.BadRequest;
        }

        try
        {
            return Review(test, book, output, terminal, log);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or InvalidOperationException or RegimenException or IntegrationException)
        {
            log.WriteLine($"error: {problem.Message} Nothing was written.");
            return NotebookRunException.BadRequest;
        }
    }

    private static int Review(EquilibrationTest test, RecordBook book, string output, TextWriter terminal, TextWriter log)
    {
        var fit = MembraneFit.Run(test);
        if (fit.Status != FitStatus.Converged)
        {
            log.WriteLine($"read with care: {fit.Summary}");
        }

        var review = RecordReview.Run(test.Patient, MembraneSampling.Run(fit).ToEnsemble(), book, new() { Tested = test.Solution });
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(output))!);
        File.WriteAllText(output, RecordPage.Of(review, test.Date));
        foreach (var finding in book.Findings.Concat(review.Findings))
        {
            log.WriteLine(finding.ToString());
        }

        terminal.WriteLine(output);
        return 0;
    }
}
