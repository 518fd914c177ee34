namespace Transport.Analysis;

/// <summary>A row that has more or fewer cells than the header, cells that their columns do not take, or a quotation mark astray.</summary>
/// <remarks>What it says in words is looked for in all of its cells, wherever they belong.</remarks>
/// <param name="Row">Its number.</param>
/// <param name="Fields">Its cells as they stand.</param>
/// <param name="Certain">The cells whose column is certain.</param>
/// <param name="Why">What is wrong with it: "has more cells than the header".</param>
internal sealed record LostRow(int Row, string[] Fields, IReadOnlyDictionary<BookColumn, string> Certain, string Why)
{
    /// <summary>Its date, where that can be read one way only.</summary>
    public DateOnly? Date => SheetDate.Read(Certain.GetValueOrDefault(BookWords.Date, ""), null, out var other) is { } date && other is null && BookDates.IsOfBook(date) ? date : null;
}
