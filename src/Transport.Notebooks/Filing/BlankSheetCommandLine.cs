using System.CommandLine;
using System.Text;

namespace Transport.Notebooks;

/// <summary>The command line of blank sheets: <c>blank-sheet FORM</c>.</summary>
internal static class BlankSheetCommandLine
{
    /// <param name="terminal">Where the names of written files are said.</param>
    /// <param name="log">Where problems are said.</param>
    public static Command Of(TextWriter terminal, TextWriter log)
    {
        var form = new Argument<string>("form") { Description = $"The form of test, in the words of a sheet: {Words()}; or all." };
        var output = new Option<string>("--out") { Description = "The directory for the sheets.", HelpName = "directory", DefaultValueFactory = _ => "out" };
        var blank = new Command("blank-sheet", "Writes the blank sheet of a form of test, as CSV for a spreadsheet and as HTML for one A4 page.") { form, output };
        blank.SetAction(arguments =>
        {
            try
            {
                var words = arguments.GetRequiredValue(form);
                IReadOnlyList<TestForm> forms = string.Equals(words, "all", StringComparison.OrdinalIgnoreCase) ? Enum.GetValues<TestForm>()
                    : BlankSheet.FormNamed(words) is { } named ? [named]
                    : throw new NotebookRunException(NotebookRunException.BadRequest, $"There is no form \"{words}\". Expected one of: {Words()}; or all.");
                var directory = arguments.GetRequiredValue(output);
                StagedFiles.Write(directory, [.. forms.SelectMany(FilesOf)]);
                foreach (var (name, _) in forms.SelectMany(FilesOf))
                    terminal.WriteLine(Path.Combine(directory, name));
                return 0;
            }
            catch (NotebookRunException problem)
            {
                return Refusal.Of(problem, log);
            }
        });
        return blank;
    }

    // A mark at the file's start, by which spreadsheets know the µ.
    private static IEnumerable<(string Name, byte[] Bytes)> FilesOf(TestForm form)
    {
        using var csv = new StringWriter();
        SampleSheet.WriteBlank(csv, form);
        var name = "blank-" + Word(form).Replace(' ', '-');
        var marked = new UTF8Encoding(encoderShouldEmitUTF8Identifier: true);
        return [(name + ".csv", [.. marked.GetPreamble(), .. marked.GetBytes(csv.ToString())]), (name + ".html", Encoding.UTF8.GetBytes(BlankPage.Of(form).Html))];
    }

    private static string Word(TestForm form) => BlankSheet.Forms.First(pair => pair.Value == form).Key;

    private static string Words() => string.Join(", ", Enum.GetValues<TestForm>().Select(form => Word(form).Replace(' ', '-')));
}
