using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Transport.Notebooks;

/// <summary>The entry by which Jupyter finds the kernel: a directory with <c>kernel.json</c>, the program, and the chart program.</summary>
internal static class KernelSpec
{
    /// <summary>The kernel's name on the command line and in notebooks.</summary>
    public const string Name = "transport";

    private static readonly JsonSerializerOptions Layout = new() { WriteIndented = true };

    /// <summary>Where this user's entry lies, by the rules of Jupyter for each system.</summary>
    public static string Directory() => Path.Combine(DataDirectory(), "kernels", Name);

    /// <summary>Copies the running program there and writes the entry, replacing an older one.</summary>
    /// <returns>The entry's directory.</returns>
    /// <exception cref="IOException">It cannot be written.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be written.</exception>
    public static string Install()
    {
        // Beside the old one first: an install that breaks off leaves the old one as it was.
        var directory = Directory();
        var staged = directory + ".partial";
        if (System.IO.Directory.Exists(staged))
            System.IO.Directory.Delete(staged, recursive: true);
        Copy(AppContext.BaseDirectory, Path.Combine(staged, "program"));
        File.WriteAllText(Path.Combine(staged, LiveChart.ScriptFile), LiveChart.Script());

        var entry = new JsonObject
        {
            ["argv"] = new JsonArray(
                DotnetHost(), Path.Combine(directory, "program", $"{typeof(KernelSpec).Assembly.GetName().Name}.dll"),
                "kernel", "run", "{connection_file}"),
            ["display_name"] = "Transport (C#)",
            ["language"] = "C#",
            ["interrupt_mode"] = "message",
            ["env"] = new JsonObject { ["DOTNET_TieredPGO"] = "0" }, // starts sooner; a session is too short to earn it back
            ["metadata"] = new JsonObject { ["debugger"] = false },
        };
        File.WriteAllText(Path.Combine(staged, "kernel.json"), entry.ToJsonString(Layout) + "\n");

        Uninstall();
        System.IO.Directory.Move(staged, directory);
        return directory;
    }

    /// <summary>Removes the entry and the program in it.</summary>
    /// <returns>False when there was none.</returns>
    /// <exception cref="IOException">It cannot be removed.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be removed.</exception>
    public static bool Uninstall()
    {
        if (!System.IO.Directory.Exists(Directory()))
            return false;
        System.IO.Directory.Delete(Directory(), recursive: true);
        return true;
    }

    /// <summary>The program that runs a framework-dependent build: that which runs this one.</summary>
    public static string DotnetHost()
    {
        var host = Path.GetFullPath(Path.Combine(
            RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet"));
        return File.Exists(host) ? host : "dotnet";
    }

    private static string DataDirectory()
    {
        if (Environment.GetEnvironmentVariable("JUPYTER_DATA_DIR") is { Length: > 0 } chosen)
            return chosen;
        var home = Environment.GetFolderPath(Environment.SpecialFolder.UserProfile);
        if (OperatingSystem.IsWindows())
            return Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.ApplicationData), "jupyter");
        if (OperatingSystem.IsMacOS())
            return Path.Combine(home, "Library", "Jupyter");
        return Environment.GetEnvironmentVariable("XDG_DATA_HOME") is { Length: > 0 } data
            ? Path.Combine(data, "jupyter")
            : Path.Combine(home, ".local", "share", "jupyter");
    }

    private static void Copy(string from, string to)
    {
        System.IO.Directory.CreateDirectory(to);
        foreach (var file in System.IO.Directory.EnumerateFiles(from))
            File.Copy(file, Path.Combine(to, Path.GetFileName(file)));
        foreach (var directory in System.IO.Directory.EnumerateDirectories(from))
            Copy(directory, Path.Combine(to, Path.GetFileName(directory)));
    }
}
