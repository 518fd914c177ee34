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
        List<Finding> problems = [.. Refusal.WhyNoTest(sheet), .. book.Nights.Count > 0 ? [] : book.Findings.Where(finding => finding.Severity == Severity.Error)];
        if (problems.Count > 0)
            return Refusal.Of(problems, log);

        try
        {
            return book.Nights.Count > 0
                ? Review(sheet.ToTest(), book, output, terminal, log)
                : throw new NotebookRunException(NotebookRunException.BadRequest, $"{book.FileName} holds no night that can be used; nothing was written.");
        }
        catch (NotebookRunException problem)
        {
            return Refusal.Of(problem, log);
        }
        catch (Exception problem) when (problem is ArgumentException or InvalidOperationException or RegimenException or IntegrationException)
        {
            return Refusal.Of(problem, log);
        }
    }

    private static int Review(EquilibrationTest test, RecordBook book, string output, TextWriter terminal, TextWriter log)
    {
        var fit = MembraneFit.Run(test);
        if (fit.Status != FitStatus.Converged)
        {
            log.WriteLine($"read with care: {fit.Summary}");
        }

        var review = RecordReview.Run(test.Patient, fit.ToEnsemble(), book, new() { Tested = test.Solution });
        StagedFiles.Write(output, RecordPage.Of(review, test.Date));
        foreach (var finding in book.Findings.Concat(review.Findings))
        {
            log.WriteLine(finding.ToString());
        }

        terminal.WriteLine(output);
        return 0;
    }
}
