using System.CommandLine;
using System.Globalization;

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
        var floor = new Option<string?>("--floor") { Description = "Least ultrafiltration that is wanted in 24 h, mL.", HelpName = "mL" };
        var ceiling = new Option<string?>("--ceiling") { Description = "Most ultrafiltration in 24 h, mL: above it the patient may dry out. Without both nothing is judged by it.", HelpName = "mL" };
        var protocol = new Option<string?>("--protocol") { Description = "A file with the clinic's own limits.", HelpName = "file" };
        var collection = new Option<string?>("--collection") { Description = "The sheet of a 24-h collection under the present regimen (CSV): what it measured stands beside what is simulated.", HelpName = "sheet.csv" };
        var command = new Command("simulate", "What regimens return in the person of a test, side by side.") { sheet, regimens, page, floor, ceiling, collection, protocol };
        command.SetAction((arguments, cancellation) => Task.FromResult(Run(
            arguments.GetRequiredValue(sheet),
            arguments.GetRequiredValue(regimens),
            arguments.GetValue(page),
            (arguments.GetValue(floor), arguments.GetValue(ceiling)),
            arguments.GetValue(collection),
            arguments.GetValue(protocol),
            terminal,
            log,
            cancellation)));
        return command;
    }

    private static int Run(
        string sheetPath,
        string[] regimenPaths,
        string? pagePath,
        (string? Floor, string? Ceiling) range,
        string? collectionPath,
        string? protocolPath,
        TextWriter terminal,
        TextWriter log,
        CancellationToken cancellation)
    {
        try
        {
            if (regimenPaths.Append(sheetPath).Append(collectionPath ?? sheetPath).Any(string.IsNullOrWhiteSpace))
                throw new NotebookRunException(NotebookRunException.BadRequest, "The name of a file is empty.");

            List<string> requests = [.. new[] { Refusal.WhyTwice(regimenPaths), pagePath is null ? null : StagedFiles.WhyNot(pagePath) }.OfType<string>()];
            var fluid = Fluid(range.Floor, range.Ceiling, requests);
            var sheet = SampleSheet.Read(sheetPath);
            var files = regimenPaths.Select(RegimenFile.Read).ToList();
            List<Finding> problems = [.. Refusal.WhyNoTest(sheet), .. files.SelectMany(file => Refusal.Why(file.Findings))];
            var collected = collectionPath is null ? null : SampleSheet.Read(collectionPath);
            problems.AddRange(collected is null ? [] : Refusal.WhyNoCollection(collected));
            problems.AddRange(collected is null ? [] : SheetGroup.WhyNotOfOnePerson([sheet, collected]).Where(reason => reason.Code != SampleSheetCodes.SheetsWithoutDate.Code));
            var limits = ProtocolFile.Read(protocolPath, problems)?.ToOptions() ?? EquilibrationIndicesOptions.Default;
            if (requests.Count + problems.Count > 0)
                return Refusal.Of(requests, problems, log);

            var regimens = Named(regimenPaths, files);
            foreach (var finding in files.SelectMany(file => file.Findings))
                log.WriteLine(finding);

            var indices = FiledPages.IndicesOf(sheet, limits);
            var test = indices.Test;
            var fit = MembraneFit.Run(test);
            var measured = collected is null ? null : CollectionIndices.Of(collected.ToCollection(), limits);
            var look = OutlookOptions.Of(test, fit) with { Simulation = Timed, Fluid = fluid };
            look = measured?.Collection.PlasmaClock is { } clock ? look with { SampleTimes = [.. look.SampleTimes.Append(clock).Distinct().Order()] } : look;
            var comparison = RegimenComparison.Run(
                test.Patient, MembraneSampling.Run(fit).ToEnsemble(100), regimens[0].Week, regimens.Skip(1), look, new RunControl { Cancellation = cancellation });
            var beside = measured is null ? null : CollectionComparison.Of(measured, comparison.Present);
            if (pagePath is not null)
                StagedFiles.Write(pagePath, RegimenPage.Of(sheet, indices, fit, comparison, beside));
            terminal.WriteLine(RegimenPage.Basis(sheet, indices, fit).Text);
            if (beside is not null)
                terminal.WriteLine(RegimenReports.Of(beside).Text);
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

    private static FluidTarget? Fluid(string? floor, string? ceiling, List<string> requests)
    {
        if (floor is null && ceiling is null)
            return null;

        var (least, most) = (Milliliters("--floor", floor), Milliliters("--ceiling", ceiling));
        if (floor is null || ceiling is null)
            requests.Add("A range of ultrafiltration has two ends: give --floor and --ceiling, in mL, or neither.");
        else if (least < most)
            return FluidTarget.Between(Volume.FromMilliliters(least.Value), Volume.FromMilliliters(most.Value));
        else if (least is not null && most is not null)
            requests.Add($"A range of ultrafiltration has its floor below its ceiling, both in mL; found --floor {floor} and --ceiling {ceiling}.");
        return null;

        double? Milliliters(string option, string? text)
        {
            if (double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value))
            {
                // 0.8 is a floor in litres, which as millilitres every night would keep.
                if (value != 0 && Math.Abs(value) < 10)
                    requests.Add($"{option} is a number of mL; found '{text}', which looks like litres: write {1000 * value:0}.");
                return value;
            }

            if (text is not null)
                requests.Add($"{option} is a number of mL, with a decimal point; found '{text}'.");
            return null;
        }
    }

    // A file that states a week is that week; otherwise each of its regimens is done every day. By its own name, or that of its file; with the whole path where two would be
    // called the same.
    private static List<(string Name, RegimenWeek Week)> Named(string[] paths, List<RegimenFile> files)
    {
        var all = files.SelectMany((file, i) => file.Week is { } week
            ? [(Path: paths[i], Own: file.Regimens.Length == 1 ? file.Regimens[0].Name : "", Week: week)]
            : file.Regimens.Select(named => (Path: paths[i], Own: named.Name, Week: RegimenWeek.OfNights(named.Regimen, 7)))).ToList();
        var names = all.Select(one => one.Own.Length > 0 ? one.Own : Path.GetFileNameWithoutExtension(one.Path)).ToList();
        return [.. all.Select((one, i) => (
            names[i] == RegimenComparison.PresentName || names.Count(name => name == names[i]) > 1 ? $"{one.Path} {one.Own}".TrimEnd() : names[i], one.Week))];
    }
}
