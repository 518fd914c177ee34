using System.CommandLine;

namespace Transport.Notebooks;

/// <summary>The command line of a simulation: <c>simulate SHEET REGIMEN...</c>, the first regimen being the present one.</summary>
internal static class SimulateCommandLine
{
    // As careful as regimens are looked at by default, with plasma that rises and falls, and every five minutes kept for the chart.
    private static readonly RegimenOptions Timed = OutlookOptions.Default.Simulation with { Timeline = TimeSpan.FromMinutes(5), Body = BodyKinetics.Default };

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
            if (regimenPaths.Append(sheetPath).Any(string.IsNullOrWhiteSpace))
                throw new NotebookRunException(NotebookRunException.BadRequest, "The name of a file is empty.");

            var sheet = SampleSheet.Read(sheetPath);
            var files = regimenPaths.Select(RegimenFile.Read).ToList();
            List<Finding> problems = [.. Refusal.WhyNoTest(sheet), .. files.SelectMany(file => file.Findings).Where(finding => finding.Severity == Severity.Error)];
            if (problems.Count > 0)
                return Refusal.Of(problems, log);

            var test = sheet.ToTest();
            var regimens = Named(regimenPaths, files);
            foreach (var finding in sheet.Findings.Concat(files.SelectMany(file => file.Findings)))
                log.WriteLine(finding);

            var fit = MembraneFit.Run(test);
            if (fit.Status != FitStatus.Converged)
                log.WriteLine($"read with care: {fit.Summary}");

            var comparison = RegimenComparison.Run(
                test.Patient, MembraneSampling.Run(fit).ToEnsemble(100), regimens[0].Week, regimens.Skip(1), OutlookOptions.Default with { Tested = test.Solution, Simulation = Timed }, new RunControl { Cancellation = cancellation });
            if (pagePath is not null)
                StagedFiles.Write(pagePath, RegimenPage.Of(sheet, comparison));
            terminal.WriteLine(RegimenReports.Of(comparison).Text);
            if (pagePath is not null)
                terminal.WriteLine(pagePath);
            return 0;
        }
        catch (NotebookRunException problem)
        {
            return Refusal.Of(problem, log);
        }
        catch (Exception problem) when (problem is ArgumentException or RegimenException or IntegrationException)
        {
            return Refusal.Of(problem, log);
        }
        catch (OperationCanceledException)
        {
            log.WriteLine("\ncancelled, nothing was written");
            return 130;
        }
    }

    // A file that states a week is that week; otherwise each of its regimens is done every day. By its own name, or that of its file; with the whole path where two would be
    // called the same.
    private static List<(string Name, RegimenWeek Week)> Named(string[] paths, List<RegimenFile> files)
    {
        if (paths.Select(Path.GetFullPath).GroupBy(path => path).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new NotebookRunException(NotebookRunException.BadRequest, $"{Path.GetFileName(twice.Key)} is given twice.");

        var all = files.SelectMany((file, i) => file.Week is { } week
            ? [(Path: paths[i], Own: file.Regimens.Length == 1 ? file.Regimens[0].Name : "", Week: week)]
            : file.Regimens.Select(named => (Path: paths[i], Own: named.Name, Week: RegimenWeek.OfNights(named.Regimen, 7)))).ToList();
        var names = all.Select(one => one.Own.Length > 0 ? one.Own : Path.GetFileNameWithoutExtension(one.Path)).ToList();
        return [.. all.Select((one, i) => (
            names[i] == RegimenComparison.PresentName || names.Count(name => name == names[i]) > 1 ? $"{one.Path} {one.Own}".TrimEnd() : names[i], one.Week))];
    }
}
