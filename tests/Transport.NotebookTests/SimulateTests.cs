using Transport.Tests;

namespace Transport.NotebookTests;

/// <summary>The command that simulates regimen files for the person of a sheet.</summary>
public sealed class SimulateTests
{
    private static readonly string Sheet = Path.Combine(Repository.Root, "reference-data", "examples", "merrow-01-average.csv");

    private static readonly string Regimens = Path.Combine(Repository.Root, "reference-data", "examples", "regimens");

    [Fact]
    public async Task Regimens_of_files_are_laid_side_by_side_and_written_as_a_page()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var page = Path.Combine(folder.FullName, "page.html");
            var (code, said, log) = await Run(Sheet, Path.Combine(Regimens, "cycling.csv"), Path.Combine(Regimens, "by-hand.csv"), "--out", page);
            Assert.Equal(0, code);
            Assert.Contains("What would differ from now", said, StringComparison.Ordinal);
            Assert.Contains("icodextrin-in-use", log, StringComparison.Ordinal);
            var html = await File.ReadAllTextAsync(page);
            Assert.Contains("<svg", html, StringComparison.Ordinal);
            Assert.Contains("glucose meters", html, StringComparison.Ordinal);
            Assert.DoesNotContain("NaN", html, StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    [Fact]
    public async Task What_stands_against_it_is_said_and_nothing_is_written()
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var (page, bad) = (Path.Combine(folder.FullName, "page.html"), Path.Combine(folder.FullName, "bad.csv"));
            await File.WriteAllTextAsync(bad, "item,value,unit,solution\nnight length,1,h,\nvolume per cycle,2,L,\ncycles,5,,\nnight solution,2.5 %,,\n");
            var (code, said, log) = await Run(Sheet, bad, "--out", page);
            Assert.Equal(2, code);
            Assert.Empty(said);
            Assert.Contains("bad.csv, row 5, night solution", log, StringComparison.Ordinal);
            Assert.Contains("regimen-solution-unknown", log, StringComparison.Ordinal);
            Assert.False(File.Exists(page));
            Assert.Equal(2, (await Run(Sheet, Path.Combine(folder.FullName, "missing.csv"))).Code);
        }
        finally
        {
            folder.Delete(true);
        }
    }

    private static async Task<(int Code, string Said, string Log)> Run(params string[] arguments)
    {
        using var terminal = new StringWriter();
        using var log = new StringWriter();
        var code = await SimulateCommandLine.Of(terminal, log).Parse(arguments).InvokeAsync();
        return (code, terminal.ToString(), log.ToString());
    }
}
