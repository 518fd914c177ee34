using System.Text;

namespace Transport.Notebooks;

/// <summary>Files that are written together or not at all.</summary>
internal static class StagedFiles
{
    /// <summary>Under temporary names first, so that a full disk leaves no half of a result behind.</summary>
    /// <exception cref="NotebookRunException">They cannot be written; nothing of them is left.</exception>
    public static void Write(string directory, IReadOnlyList<(string Name, string Text)> files) =>
        Write(directory, [.. files.Select(file => (file.Name, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(file.Text)))]);

    /// <summary>Why a file cannot be written, told before it is made; null where nothing speaks against it.</summary>
    public static string? WhyNot(string path) => Directory.Exists(path) ? $"The result cannot be written: '{path}' is a folder. Name a file in it." : null;

    /// <summary>One file, by its path.</summary>
    /// <exception cref="NotebookRunException">It cannot be written; nothing of it is left.</exception>
    public static void Write(string path, string text) => Write(Path.GetDirectoryName(Path.GetFullPath(path)) ?? "", [(Path.GetFileName(path), text)]);

    /// <summary>The same for bytes.</summary>
    /// <exception cref="NotebookRunException">They cannot be written; nothing of them is left.</exception>
    public static void Write(string directory, IReadOnlyList<(string Name, byte[] Bytes)> files)
    {
        var staged = files.Select(file => (Temporary: Path.Combine(directory, $".{file.Name}.partial"), file.Bytes, Final: Path.Combine(directory, file.Name))).ToList();
        if (staged.Select(file => WhyNot(file.Final)).FirstOrDefault(reason => reason is not null) is { } isFolder)
        {
            throw new NotebookRunException(NotebookRunException.BadRequest, isFolder);
        }

        try
        {
            Directory.CreateDirectory(directory);
            foreach (var file in staged)
                File.WriteAllBytes(file.Temporary, file.Bytes);
            foreach (var file in staged)
                File.Move(file.Temporary, file.Final, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new NotebookRunException(NotebookRunException.BadRequest, $"The result cannot be written: {e.Message}");
        }
        finally
        {
            foreach (var file in staged.Where(file => File.Exists(file.Temporary)))
                File.Delete(file.Temporary);
        }
    }
}
