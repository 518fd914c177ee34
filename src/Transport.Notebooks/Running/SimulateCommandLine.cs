using System.CommandLine;

namespace Transport.Notebooks;

/// <summary>The command line of a simulation: <c>simulate SHEET REGIMEN...</c>, the first regimen being the present one.</summary>
internal static class SimulateCommandLine
{
    // As careful as regimens are looked at by default, and every five minutes of the day kept for the chart.
    private static readonly RegimenOptions Timed = OutlookOptions.Default.Simulation with { Timeline = TimeSpan.FromMinutes(5) };

    /// <param name="terminal">Where results are said.</param>
    /// <param name="log">Where problems are said.</param>
    public static Command Of(TextWriter terminal, TextWriter log)
    {
        var sheet = new Argument<string>("sheet") { Description = "The sample sheet of an equilibration test (CSV)." };
        var regimens = new Argument<string[]>("regimens")
        {
            Description = "Regimen files (CSV or JSON). The first regimen is the present one, all others are laid beside it.",
            Arity = ArgumentArity.OneOrMore,
        };
        var page = new Option<string?>("--out") { Description = "Writes an HTML page with the table and the chart.", HelpName = "page.html" };
        var command = new Command("simulate", "What regimens return in the person of a test, side by side.") { sheet, regimens, page };
        command.SetAction((arguments, cancellation) => Task.FromResult(Run(
            arguments.GetRequiredValue(sheet), arguments.GetRequiredValue(regimens), arguments.GetValue(page), terminal, log, cancellation)));
        return command;
    }

    private static int Run(string sheetPath, string[] regimenPaths, string? pagePath, TextWriter terminal, TextWriter log, CancellationToken cancellation)
    {
        try
        {
            var sheet = SampleSheet.Read(sheetPath);
            var files = regimenPaths.Select(RegimenFile.Read).ToList();
            var found = sheet.Findings.Concat(files.SelectMany(file => file.Findings)).ToList();
            foreach (var finding in found)
            {
                log.WriteLine(finding);
            }

            if (found.Any(finding => finding.Severity == Severity.Error) || !sheet.TryToTest(out var test))
            {
                log.WriteLine("error: nothing was simulated; all that stands against it is above");
                return NotebookRunException.BadRequest;
            }

            if (files.Any(file => file.Week is not null))
            {
                log.WriteLine("read with care: a file says which days are treated; every figure here is as if every day were");
            }

            var fit = MembraneFit.Run(test);
            if (fit.Status != FitStatus.Converged)
            {
                log.WriteLine($"read with care: {fit.Summary}");
            }

            List<(string Name, Regimen Regimen)> all = [.. files.SelectMany(file => file.Regimens).Select((named, i) => (named.Name.Length > 0 ? named.Name : Invariant(i), named.Regimen))];
            var comparison = RegimenComparison.Run(
                test.Patient, MembraneSampling.Run(fit).ToEnsemble(100), all[0].Regimen, all.Skip(1), OutlookOptions.Default with { Tested = test.Solution, Simulation = Timed }, new RunControl { Cancellation = cancellation });
            var report = RegimenReports.Of(comparison);
            terminal.WriteLine(report.Text);
            if (pagePath is not null)
            {
                Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(pagePath))!);
                File.WriteAllText(pagePath, Page(report, comparison));
                terminal.WriteLine(pagePath);
            }

            return 0;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or RegimenException or IntegrationException)
        {
            log.WriteLine($"error: {problem.Message}");
            return NotebookRunException.BadRequest;
        }
        catch (OperationCanceledException)
        {
            log.WriteLine("\ncancelled, nothing was written");
            return 130;
        }
    }

    private static string Invariant(int i) => $"regimen {(i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";

    // A page of its own: the table, the chart as a drawing, the cautions. It refers to nothing outside.
    private static string Page(ReportBlock report, RegimenComparison comparison) =>
        $"<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>Regimens side by side</title>"
        + "<style>body{font-family:system-ui,sans-serif;max-width:64rem;margin:2rem auto;padding:0 1rem;line-height:1.45}svg{max-width:100%;height:auto}</style></head><body>"
        + $"<h1>Regimens side by side</h1>{(comparison.Rows.Length > 1 ? Drawn(RegimenCharts.Comparison(comparison)) + Drawn(RegimenCharts.Days(comparison)) : "")}{report.Html}{Caution.Block().Html}</body></html>\n";

    private static string Drawn(Figure figure) =>
        $"<figure style=\"margin:0\">{SvgRenderer.ToSvg(figure)}<figcaption><small>{System.Net.WebUtility.HtmlEncode(figure.Caption)}</small></figcaption></figure>";
}
