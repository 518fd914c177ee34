namespace Transport.Notebooks;

/// <summary>Sheets to pages: what they are is told by what they hold.</summary>
internal static class FiledPages
{
    /// <param name="paths">The sheets.</param>
    /// <param name="protocolPath">A clinic's own limits; null for those that ship.</param>
    /// <param name="problems">Every problem is added: of the sheets, of the protocol, and of their being put together.</param>
    /// <param name="said">What the sheets were taken for, a sentence each.</param>
    /// <returns>Each page with the name of its file; none where there is a problem.</returns>
    public static IReadOnlyList<(string Name, ReportPage Page)> Of(
        IReadOnlyList<string> paths, string? protocolPath, List<Finding> problems, out IReadOnlyList<string> said)
    {
        var options = ProtocolFile.Read(protocolPath, problems)?.ToOptions() ?? EquilibrationIndicesOptions.Default;
        List<SampleSheet> sheets = [.. paths.Select(SampleSheet.Read)];
        var groups = SheetGroup.Of(sheets, out var findings);
        problems.AddRange(sheets.SelectMany(sheet => Refusal.Why([.. sheet.Findings])).Union(findings));
        said = [.. groups.Select(group => group.Why + ".")];
        return problems.Count > 0 ? [] : [.. groups.GroupBy(NameOf).SelectMany(alike => alike.Select((group, i) => (Numbered(alike.Key, i), PageOf(group, options))))];
    }

    private static ReportPage PageOf(SheetGroup group, EquilibrationIndicesOptions options)
    {
        var first = group.Sheets[0];
        return group.Kind switch
        {
            SheetGroupKind.Test => ReportPages.Of(first, IndicesOf(first, options)),
            SheetGroupKind.Collection => ReportPages.Of(first, CollectionIndices.Of(first.ToCollection(), options)),
            SheetGroupKind.Pair => PairOf(group.Sheets, PairedTest.Of(first.ToTest(), group.Sheets[1].ToTest(), new() { Indices = options })),
            _ => ReportPages.Of(group.Sheets, SerialTests.Of(
                [.. group.Sheets.Select(sheet => IndicesOf(sheet, options))], new() { Thresholds = options.Thresholds })),
        };
    }

    /// <summary>The indices of a sheet, with a finding where its measurements do not go together.</summary>
    public static EquilibrationIndices IndicesOf(SampleSheet sheet, EquilibrationIndicesOptions options) => Judged(EquilibrationIndices.Of(sheet.ToTest(), options));

    private static EquilibrationIndices Judged(EquilibrationIndices indices, string? name = null) => TestCoherence.Run(indices.Test) is { } contradiction
        ? indices with { Findings = [.. indices.Findings, contradiction with { Field = name }] }
        : indices;

    // A pair that is none, as its findings say, or volumes that empty the cavity with every membrane, leave the page without a fit.
    private static ReportPage PairOf(IReadOnlyList<SampleSheet> sheets, PairedTest pair)
    {
        // One page holds both: the finding says of which.
        pair = pair with { Weak = Judged(pair.Weak, $"test with {pair.Weak.Test.Solution.Name}"), Strong = Judged(pair.Strong, $"test with {pair.Strong.Test.Solution.Name}") };
        FittedMembrane? joint = null;
        try
        {
            joint = MembraneFit.Run(ObservedExchange.From(pair));
        }
        catch (Exception failure) when (failure is ArgumentException or IntegrationException)
        {
        }

        return ReportPages.Of(sheets, pair, joint);
    }

    // Two sheets of one name, from two folders, must not write one file.
    private static string Numbered(string name, int earlier) => earlier == 0 ? name : FormattableString.Invariant($"{name}-{earlier + 1}");

    // "merrow-01-average-report", "merrow-01-average-and-2-more-series".
    private static string NameOf(SheetGroup group)
    {
        var name = Path.GetFileNameWithoutExtension(group.Sheets[0].FileName);
        return group.Kind switch
        {
            SheetGroupKind.Pair => $"{name}-pair",
            SheetGroupKind.Series => $"{name}-series",
            SheetGroupKind.Collection => $"{name}-collection",
            _ => $"{name}-report",
        };
    }
}
