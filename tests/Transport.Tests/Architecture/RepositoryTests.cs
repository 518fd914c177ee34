namespace Transport.Tests.Architecture;

/// <summary>The repository itself: what lies at its top, and that nothing in it knows the machine it was written on.</summary>
public sealed class RepositoryTests
{
    private static readonly string[] Top =
    [
        "README.md", "DEVELOPERS.md", "LICENSE", "CHANGELOG.md", "CITATION.cff", "Transport.sln", "global.json", "Directory.Build.props", "Directory.Build.targets", "Directory.Packages.props",
        "nuget.config", ".editorconfig", ".gitattributes", ".gitignore", ".config", ".ci", ".github", "src", "notebooks", "tests", "reference-data",
        "docs",
    ];

    // What a build, an editor or version control puts there.
    private static readonly string[] NotCommitted =
        [".git", "bin", "obj", "out", "TestResults", "BenchmarkDotNet.Artifacts", ".vs", ".idea", ".vscode", ".ipynb_checkpoints", "__pycache__"];

    private static readonly string[] Text =
    [
        ".cs", ".csproj", ".sln", ".props", ".targets", ".json", ".md", ".csv", ".ipynb", ".py", ".yml", ".yaml", ".html", ".css", ".js", ".txt", ".config", ".sh", ".csx",
        ".svg", "",
    ];

    [Fact]
    public void Nothing_unexpected_lies_at_the_top()
    {
        var found = new DirectoryInfo(Repository.Root).EnumerateFileSystemInfos().Select(entry => entry.Name);
        Assert.Empty(found.Except(Top).Except(NotCommitted));
    }

    [Fact]
    public void No_file_knows_the_machine_it_was_written_on()
    {
        // In two pieces, since this file is read too.
        string[] machine = ["/wo" + "rk/", "/tm" + "p/", "/ro" + "ot/", "/ho" + "me/", "C:\\Us" + "ers\\"];
        var knowing =
            from file in Files(new(Repository.Root))
            from place in machine
            where File.ReadAllText(file.FullName).Contains(place, StringComparison.OrdinalIgnoreCase)
            select $"{Path.GetRelativePath(Repository.Root, file.FullName)} contains {place}";
        Assert.Empty(knowing);
    }

    private static IEnumerable<FileInfo> Files(DirectoryInfo folder) => folder.EnumerateFiles()
        .Where(file => file.Name != ".git" && (Text.Contains(file.Extension) || file.Name.StartsWith('.')))
        .Concat(folder.EnumerateDirectories().Where(child => !NotCommitted.Contains(child.Name)).SelectMany(Files));
}
