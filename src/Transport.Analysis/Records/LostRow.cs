namespace Transport.Analysis;

/// <summary>A row that has more or fewer cells than the header, or a quotation mark astray.</summary>
/// <remarks>
/// Its cells are put back together at each place where the row may have come apart. The places that leave the fewest cells unread are kept, and a cell is certain where all of
/// them agree. What a row says in words is looked for in all of its cells, wherever they belong.
/// </remarks>
/// <param name="Row">Its number.</param>
/// <param name="Fields">Its cells as they stand.</param>
/// <param name="Certain">The cells whose column is certain.</param>
/// <param name="Why">What is wrong with it: "has more cells than the header".</param>
internal sealed record LostRow(int Row, string[] Fields, IReadOnlyDictionary<BookColumn, string> Certain, string Why)
{
    // A row with so many more is two rows, or a page.
    private const int MostSurplus = 12;

    /// <summary>Its date, where that can be read one way only.</summary>
    public DateOnly? Date => SheetDate.Read(Certain.GetValueOrDefault(BookWords.Date, ""), null, out var other) is { } date && other is null && BookDates.IsOfBook(date) ? date : null;

    /// <summary>Reads a row.</summary>
    /// <param name="row">Its number.</param>
    /// <param name="fields">Its cells.</param>
    /// <param name="why">What is wrong with it.</param>
    /// <param name="width">How many cells the header has.</param>
    /// <param name="delimiter">What parts them.</param>
    /// <param name="textsOf">The cells of a row that is as wide as the header, by column.</param>
    /// <param name="unread">How many of them could not be read.</param>
    public static LostRow Of(
        int row, string[] fields, string why, int width, char delimiter, Func<string[], IReadOnlyDictionary<BookColumn, string>> textsOf, Func<IReadOnlyDictionary<BookColumn, string>, int> unread)
    {
        var surplus = fields.Length - width;
        if (Math.Abs(surplus) > MostSurplus)
        {
            return new(row, fields, new Dictionary<BookColumn, string>(), why);
        }

        var ways = Enumerable.Range(0, surplus == 0 ? 1 : Math.Min(width, fields.Length)).Select(at => textsOf(Joined(at))).Select(texts => (Texts: texts, Unread: unread(texts))).ToList();
        var fewest = ways.Min(way => way.Unread);
        var kept = ways.Where(way => way.Unread == fewest).Select(way => way.Texts).ToList();
        return new(row, fields, kept[0].Where(cell => kept.TrueForAll(texts => texts.GetValueOrDefault(cell.Key) == cell.Value)).ToDictionary(), why);

        // Too many come together at this place; too few leave blank ones there.
        string[] Joined(int at) => surplus >= 0
            ? [.. fields[..at], string.Join(delimiter, fields[at..(at + surplus + 1)]).Trim(delimiter, ' '), .. fields[(at + surplus + 1)..]]
            : [.. fields[..at], .. Enumerable.Repeat("", -surplus), .. fields[at..]];
    }
}
