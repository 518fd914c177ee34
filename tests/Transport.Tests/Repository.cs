namespace Transport.Tests;

/// <summary>Where the repository lies that these tests were built from; both test projects compile this file.</summary>
internal static class Repository
{
    public static string Root { get; } = Find();

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Transport.sln")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("Transport.sln was not found above the tests.");
    }
}
