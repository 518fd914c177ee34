namespace Transport.Tests.DocSnippets;

/// <summary>Programs that name files by their path in the repository and write to the console: nothing else runs beside them.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public sealed class FromTheRoot
{
    public const string Name = "from the repository's root";

    /// <summary>Runs a program from the root and returns what it printed.</summary>
    internal static string Printed(Action program)
    {
        var (folder, console) = (Environment.CurrentDirectory, Console.Out);
        using var printed = new StringWriter();
        try
        {
            Environment.CurrentDirectory = Documentation.Root;
            Console.SetOut(printed);
            program();
        }
        finally
        {
            Console.SetOut(console);
            Environment.CurrentDirectory = folder;
        }

        return printed.ToString().ReplaceLineEndings("\n");
    }
}
