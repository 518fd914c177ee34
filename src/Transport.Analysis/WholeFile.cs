using System.Text;

namespace Transport.Analysis;

/// <summary>A file that is there whole or not at all: written aside, then renamed.</summary>
internal static class WholeFile
{
    private const string Aside = ".aside";

    /// <summary>Writes a file; until it is whole, what stood there before stands.</summary>
    public static void Write(string path, Action<Stream> write)
    {
        var aside = path + Aside;
        using (var stream = new FileStream(aside, FileMode.Create, FileAccess.Write))
        {
            write(stream);
            stream.Flush(flushToDisk: true);
        }

        File.Move(aside, path, overwrite: true);
    }

    /// <summary>The same of a text.</summary>
    public static void Write(string path, string text) => Write(path, stream => stream.Write(Encoding.UTF8.GetBytes(text)));

    /// <summary>Removes what a killed run left half written.</summary>
    public static void Clear(string directory)
    {
        foreach (var left in Directory.EnumerateFiles(directory, "*" + Aside))
        {
            File.Delete(left);
        }
    }
}
