using System.CommandLine;

namespace Transport.Notebooks;

/// <summary>The command line of pages for the file: <c>report SHEET.csv …</c>.</summary>
internal static class ReportCommandLine
{
    /// <param name="terminal">Where the names of written files are said.</param>
    /// <param name="log">Where problems are said, and what several sheets were taken for.</param>
    public static Command Of(TextWriter terminal, TextWriter log)
    {
        var sheets = new Argument<string[]>("sheet") { Description = "One or more sample sheets (.csv) of one person.", Arity = ArgumentArity.OneOrMore };
        var protocol = new Option<string?>("--protocol") { Description = "A file with the clinic's own limits.", HelpName = "file" };
        var output = new Option<string>("--out") { Description = "The directory for the pages.", HelpName = "directory", DefaultValueFactory = _ => "out" };
        var report = new Command("report", "Writes the page for the file, as HTML for one A4 sheet and as Markdown: of one test, a pair, a collection or a series.") { sheets, protocol, output };
        report.SetAction(arguments =>
        {
            try
            {
                var problems = new List<Finding>();
                var paths = arguments.GetRequiredValue(sheets);
                List<string> requests = [.. new[] { paths.Any(string.IsNullOrWhiteSpace) ? "The name of a file is empty." : null, Refusal.WhyTwice(paths) }.OfType<string>()];
                var pages = FiledPages.Of([.. paths.Where(path => !string.IsNullOrWhiteSpace(path)).DistinctBy(Path.GetFullPath)], arguments.GetValue(protocol), problems, out var said);
                if (requests.Count + problems.Count > 0)
                    return Refusal.Of(requests, problems, log);

                foreach (var sentence in said)
                    log.WriteLine(sentence);
                var directory = arguments.GetRequiredValue(output);
                StagedFiles.Write(directory, [.. pages.SelectMany(page => new[] { (page.Name + ".html", page.Page.Html), (page.Name + ".md", page.Page.Markdown) })]);
                foreach (var (name, _) in pages)
                    terminal.WriteLine(Path.Combine(directory, name + ".html"));
                return 0;
            }
            catch (NotebookRunException problem)
            {
                return Refusal.Of(problem, log);
            }
        });
        return report;
    }
}
