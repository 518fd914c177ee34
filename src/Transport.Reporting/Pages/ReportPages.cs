namespace Transport.Reporting;

/// <summary>Results as one page for the file. Reads results and their sheets, computes nothing.</summary>
public static class ReportPages
{
    /// <summary>The page of one test.</summary>
    /// <param name="sheet">The sheet that <paramref name="indices"/> were computed from: the laboratory's own units and what was found in it.</param>
    /// <param name="indices">Its indices.</param>
    /// <exception cref="ArgumentException">The indices are of another sheet.</exception>
    public static ReportPage Of(SampleSheet sheet, EquilibrationIndices indices)
    {
        ArgumentNullException.ThrowIfNull(indices);
        return TestPage.Of(SheetOf([sheet], indices.Test), indices);
    }

    /// <summary>The page of two paired tests.</summary>
    /// <param name="sheets">The two sheets, in either order.</param>
    /// <param name="pair">The pair made of them.</param>
    /// <param name="joint">One membrane fitted to both (<see cref="ObservedExchange.From(PairedTest, AssayErrors)"/>); null: none is shown.</param>
    /// <exception cref="ArgumentException">The pair is of other sheets, or the fit of other tests.</exception>
    public static ReportPage Of(IReadOnlyList<SampleSheet> sheets, PairedTest pair, FittedMembrane? joint = null)
    {
        ArgumentNullException.ThrowIfNull(pair);
        EquilibrationTest[] tests = [pair.Weak.Test, pair.Strong.Test];
        return joint is null || joint.Exchanges.Select(one => (one.Patient, one.Dwell.Solution, one.Dwell.Duration)).SequenceEqual(tests.Select(test => (test.Patient, test.Solution, test.Dwell)))
            ? PairPage.Of(SheetOf(sheets, pair.Weak.Test), SheetOf(sheets, pair.Strong.Test), pair, joint)
            : throw new ArgumentException("This fit is not of these two tests: a page never mixes two.", nameof(joint));
    }

    /// <summary>The page of a 24-h collection.</summary>
    /// <param name="sheet">The sheet that <paramref name="indices"/> were computed from.</param>
    /// <param name="indices">Its indices.</param>
    /// <exception cref="ArgumentException">The indices are of another sheet.</exception>
    public static ReportPage Of(SampleSheet sheet, CollectionIndices indices)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        ArgumentNullException.ThrowIfNull(indices);
        return sheet.TryToCollection(out var day) && ReferenceEquals(day, indices.Collection)
            ? CollectionPage.Of(sheet, indices)
            : throw new ArgumentException("These indices are not of this sheet: a page never mixes two.", nameof(indices));
    }

    /// <summary>The page of one person's tests over time.</summary>
    /// <param name="sheets">The sheets of the tests, in any order.</param>
    /// <param name="series">The series made of them.</param>
    /// <exception cref="ArgumentException">A test is of none of the sheets, or no test has a date.</exception>
    public static ReportPage Of(IReadOnlyList<SampleSheet> sheets, SerialTests series)
    {
        ArgumentNullException.ThrowIfNull(series);
        return series.Tests.Count == 0
            ? throw new ArgumentException("A series without a dated test has no page.", nameof(series))
            : SeriesPage.Of([.. series.Tests.Select(indices => SheetOf(sheets, indices.Test))], series);
    }

    private static SampleSheet SheetOf(IReadOnlyList<SampleSheet> sheets, EquilibrationTest test)
    {
        ArgumentNullException.ThrowIfNull(sheets);
        return sheets.FirstOrDefault(sheet => sheet is not null && sheet.TryToTest(out var own) && ReferenceEquals(own, test))
            ?? throw new ArgumentException("These indices are not of these sheets: a page never mixes two.", nameof(sheets));
    }
}
