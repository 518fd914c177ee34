namespace Transport.Notebooks;

/// <summary>A clinic's own limits as a command is given them.</summary>
internal static class ProtocolFile
{
    /// <summary>Reads the file.</summary>
    /// <param name="path">The file; null for the limits that ship.</param>
    /// <param name="problems">Every error of the file is added, those of its part on record books among them.</param>
    /// <returns>The protocol; null where there is none, or it cannot be opened.</returns>
    public static LocalProtocol? Read(string? path, List<Finding> problems)
    {
        if (path is null)
            return null;
        try
        {
            var protocol = LocalProtocol.Read(path);
            ReviewLimits.From(protocol, out var ofNights);
            problems.AddRange(protocol.Findings.Concat(ofNights).Where(finding => finding.Severity == Severity.Error).Select(finding => finding with { File = Path.GetFileName(path) }));
            return protocol;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            problems.Add(new(Severity.Error, "protocol-unreadable", "The file of limits cannot be opened; check its name and folder.") { File = Path.GetFileName(path) });
            return null;
        }
    }
}
