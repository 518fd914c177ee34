using System.CommandLine;
using NetMQ;

namespace Transport.Notebooks;

/// <summary>The command line of the kernel: <c>kernel install</c>, <c>kernel uninstall</c>, <c>kernel run CONNECTION-FILE</c>.</summary>
internal static class KernelCommandLine
{
    /// <param name="terminal">Where results are said.</param>
    /// <param name="log">Where problems are said; opened before any kernel starts.</param>
    public static Command Of(TextWriter terminal, TextWriter log)
    {
        var install = new Command("install", "Makes this kernel known to the Jupyter of this user.");
        install.SetAction(_ => Try(log, () => terminal.WriteLine(KernelSpec.Install())));

        var uninstall = new Command("uninstall", "Removes the kernel that was installed.");
        uninstall.SetAction(_ => Try(log, () => terminal.WriteLine(KernelSpec.Uninstall() ? $"removed {KernelSpec.Directory()}" : "none was installed")));

        var connection = new Argument<string>("connection-file") { Description = "Written by the front end that starts the kernel." };
        var run = new Command("run", "Serves one front end; started by Jupyter.") { connection };
        run.SetAction(async (arguments, cancellation) =>
        {
            try
            {
                await JupyterKernel.RunAsync(arguments.GetRequiredValue(connection), log, cancellation);
                Environment.Exit(0); // a cell that never yields would keep the process
                return 0;
            }
            catch (Exception e) when (e is InvalidDataException or NetMQException)
            {
                log.WriteLine($"error: {e.Message}");
                return NotebookRunException.BadRequest;
            }
        });

        return new Command("kernel", "The kernel for Jupyter.") { install, uninstall, run };
    }

    private static int Try(TextWriter log, Action action)
    {
        try
        {
            action();
            return 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            log.WriteLine($"error: {e.Message}");
            return NotebookRunException.BadRequest;
        }
    }
}
