using System.CommandLine;
using System.Text;
using Transport.Notebooks;

// Opened before any kernel starts: a kernel takes over Console.Out and Console.Error.
var utf8 = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
using var terminal = new StreamWriter(Console.OpenStandardOutput(), utf8) { AutoFlush = true };
using var log = new StreamWriter(Console.OpenStandardError(), utf8) { AutoFlush = true };

var notebook = new Argument<string>("notebook") { Description = "The notebook to run (.ipynb), or a directory of them." };
var set = new Option<string[]>("--set")
{
    Description = "Sets a parameter of the notebook: name=value. May be given more than once.",
    HelpName = "name=value",
    DefaultValueFactory = _ => [],
};
var output = new Option<string>("--out")
{
    Description = "The directory for the executed notebook and its page.",
    HelpName = "directory",
    DefaultValueFactory = _ => "out",
};

var run = new Command("run", "Runs a notebook and writes it with its outputs, and one self-contained HTML page.") { notebook, set, output };
run.SetAction(async (arguments, cancellation) =>
{
    try
    {
        if (Directory.Exists(arguments.GetRequiredValue(notebook)))
        {
            return await FolderRun.RunAsync(
                arguments.GetRequiredValue(notebook), arguments.GetRequiredValue(set), arguments.GetRequiredValue(output), terminal, log, cancellation);
        }

        var page = await NotebookRun.RunAsync(
            arguments.GetRequiredValue(notebook),
            new NotebookRunOptions
            {
                Settings = arguments.GetRequiredValue(set),
                OutputDirectory = arguments.GetRequiredValue(output),
                Progress = log,
            },
            cancellation);
        terminal.WriteLine(page);
        return 0;
    }
    catch (NotebookRunException problem)
    {
        return Refusal.Of(problem, log);
    }
    catch (OperationCanceledException)
    {
        log.WriteLine("\ncancelled, nothing was written");
        return 130;
    }
});

var root = new RootCommand("Notebooks on peritoneal membrane transport.")
{
    run,
    ReportCommandLine.Of(terminal, log),
    BlankSheetCommandLine.Of(terminal, log),
    SimulateCommandLine.Of(terminal, log),
    ReviewCommandLine.Of(terminal, log),
    KernelCommandLine.Of(terminal, log),
};
var parsed = root.Parse(args);
var exitCode = await parsed.InvokeAsync(new InvocationConfiguration { ProcessTerminationTimeout = TimeSpan.FromSeconds(10) });
return parsed.Errors.Count > 0 ? NotebookRunException.BadRequest : exitCode;
