using System.Text;

namespace Transport.Analysis;

/// <summary>Bytes to text: UTF-8, UTF-16 with its mark, or Windows-1252.</summary>
internal static class SheetText
{
    /// <summary>The text of a file; null where it cannot be had, which is then a finding.</summary>
    public static string? OfFile(string path, List<Finding> findings)
    {
        try
        {
            using var stream = File.OpenRead(path);
            return Of(stream, findings);
        }
        catch (Exception problem) when (problem is FileNotFoundException or DirectoryNotFoundException)
        {
            findings.Add(SampleSheetCodes.FileNotFound.Finding("There is no such file; check its name and folder."));
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            findings.Add(SampleSheetCodes.FileUnreadable.Finding("The file cannot be opened. Close it in other programs and check that you may read it."));
        }

        return null;
    }

    /// <summary>The text of a stream, from where it stands; null where there is none, which is then a finding.</summary>
    public static string? Of(Stream stream, List<Finding> findings)
    {
        if (stream.CanSeek && stream.Length - stream.Position > SampleSheetLimits.FileBytes)
        {
            findings.Add(TooLarge());
            return null;
        }

        return Decode(ReadBounded(stream), findings);
    }

    /// <summary>Comment lines without their mark (#), in their order.</summary>
    public static IReadOnlyList<string> CommentsOf(string text) =>
        [.. text.Split('\n').Where(line => line.StartsWith('#')).Select(line => line.Trim('#', ' ', '\r', '\uFEFF'))];

    /// <summary>At most one byte more than a sheet may have, so that a huge stream is never read whole.</summary>
    private static byte[] ReadBounded(Stream stream)
    {
        using var bytes = new MemoryStream();
        var block = new byte[81920];
        int count;
        while (bytes.Length <= SampleSheetLimits.FileBytes && (count = stream.Read(block)) > 0)
        {
            bytes.Write(block, 0, count);
        }

        return bytes.ToArray();
    }

    /// <summary>The text, or the one finding that says why there is none.</summary>
    private static string? Decode(byte[] bytes, List<Finding> findings)
    {
        if (bytes.Length > SampleSheetLimits.FileBytes)
        {
            findings.Add(TooLarge());
            return null;
        }

        var text = Decode(bytes);
        if (text is null || text.Any(IsBinary))
        {
            findings.Add(SampleSheetCodes.FileNotText.Finding(
                "This is not a text file. Save the spreadsheet as CSV (comma or semicolon separated) and read that."));
            return null;
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            findings.Add(SampleSheetCodes.FileEmpty.Finding("The file is empty. Start from the blank sheet."));
            return null;
        }

        return text;
    }

    private static Finding TooLarge() => SampleSheetCodes.FileTooLarge.Finding(
        $"The file is larger than {SampleSheetLimits.FileBytes / 1_000_000} MB and was not read. A sample sheet has a few kB; check which file was chosen.");

    private static string? Decode(byte[] bytes) => bytes switch
    {
        [0xEF, 0xBB, 0xBF, ..] => Strictly(new UTF8Encoding(false, true), bytes.AsSpan(3)),
        [0xFF, 0xFE, ..] => Strictly(new UnicodeEncoding(false, false, true), bytes.AsSpan(2)),
        [0xFE, 0xFF, ..] => Strictly(new UnicodeEncoding(true, false, true), bytes.AsSpan(2)),
        _ => Strictly(new UTF8Encoding(false, true), bytes) ?? CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes),
    };

    private static string? Strictly(Encoding encoding, ReadOnlySpan<byte> bytes)
    {
        try
        {
            return encoding.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }

    // Windows-1252 gives C1 controls for its five unused bytes: no text has them.
    private static bool IsBinary(char letter) => char.IsControl(letter) && letter is not ('\t' or '\r' or '\n');
}
