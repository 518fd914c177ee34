using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>A review of a record book, short enough for a cell. <see cref="RecordPage"/> is the page for the visit.</summary>
public static class RecordReports
{
    /// <summary>What was looked at, and the findings: each lasting change among them, with its date, its size and what is compatible with it.</summary>
    public static ReportBlock Of(RecordReview review)
    {
        ArgumentNullException.ThrowIfNull(review);
        return new ReportBlock().Sentence(review.Nights.Count == 0
            ? "The book holds no night that could be read."
            : Invariant($"{review.Nights.Count} nights, {review.Nights[0].Record.Date:yyyy-MM-dd} to {review.Nights[^1].Record.Date:yyyy-MM-dd}; {(review.Changes.Count == 1 ? "1 lasting change" : $"{review.Changes.Count} lasting changes")} found."))
            .FindingList(review.Findings)
            .Small("No flag is not safety. " + Caution.AtOnce);
    }
}
