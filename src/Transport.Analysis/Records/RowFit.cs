namespace Transport.Analysis;

/// <summary>Lays the cells of a row under the columns of the header where delimiters are too many or too few.</summary>
/// <remarks>
/// Of all ways in which neighbors may belong together, or blank cells may be missing, those are kept that leave the fewest cells unread. What all of them put under a column is
/// certain. A comma in free words or in a number is a better reason for a delimiter than none.
/// </remarks>
/// <param name="header">The columns as they stand; null where one is not known.</param>
/// <param name="delimiter">What parts the cells.</param>
/// <param name="canRead">Whether a column takes a text.</param>
internal sealed class RowFit(BookColumn?[] header, char delimiter, Func<BookColumn, string, bool> canRead)
{
    // More delimiters for no reason than that are no better than one cell that cannot be read.
    private const int CostOfUnread = 4;

    // A row with so many more is two rows, or a page.
    private const int MostSurplus = 6;

    /// <summary>How a row lies.</summary>
    /// <param name="Unread">How many cells the best ways leave unread; a missing date is one.</param>
    /// <param name="Certain">What all of these put under a column.</param>
    public readonly record struct Fit(int Unread, IReadOnlyDictionary<BookColumn, string> Certain);

    /// <summary>The best ways to lie, where cells exceed or fall short of the header by as many as there are more or less of them.</summary>
    public Fit Of(string[] fields)
    {
        var surplus = fields.Length - header.Length;
        var slips = Math.Abs(surplus);
        if (slips > MostSurplus)
        {
            return new(header.Length, new Dictionary<BookColumn, string>());
        }

        var (before, after) = (new Ways[header.Length + 1, slips + 1], new Ways[header.Length + 1, slips + 1]);
        (before[0, 0], after[header.Length, slips]) = (new(0, 1), new(0, 1));
        for (var column = 0; column < header.Length; column++)
        {
            for (var used = 0; used <= slips; used++)
            {
                foreach (var cell in CellsFor(column, used))
                {
                    before[column + 1, used + cell.Slips] = before[column + 1, used + cell.Slips].Or(before[column, used].With(cell.Cost));
                }
            }
        }

        for (var column = header.Length - 1; column >= 0; column--)
        {
            for (var used = 0; used <= slips; used++)
            {
                foreach (var cell in CellsFor(column, used))
                {
                    after[column, used] = after[column, used].Or(after[column + 1, used + cell.Slips].With(cell.Cost));
                }
            }
        }

        var best = after[0, 0];
        var certain = new Dictionary<BookColumn, string>();
        foreach (var known in BookWords.Columns)
        {
            var column = Array.IndexOf(header, known);
            if (column < 0)
            {
                continue;
            }

            var ways = Enumerable.Range(0, slips + 1).SelectMany(used => CellsFor(column, used)
                    .Select(cell => (cell.Text, before[column, used].Cost + cell.Cost + after[column + 1, used + cell.Slips].Cost, Count: before[column, used].Count * after[column + 1, used + cell.Slips].Count)))
                .Where(way => way.Count > 0 && way.Item2 == best.Cost).GroupBy(way => way.Text).ToList();
            if (ways is [{ Key.Length: > 0 } only])
            {
                certain[known] = only.Key;
            }
        }

        return new(best.Cost / CostOfUnread, certain);

        // Too many cells come together; too few leave a column blank.
        IEnumerable<(string Text, int Slips, int Cost)> CellsFor(int column, int used)
        {
            var first = surplus >= 0 ? column + used : column - used;
            if (surplus < 0 && used < slips)
            {
                yield return ("", 1, CostOf(column, ""));
            }

            for (var joined = 0; first >= 0 && first + joined < fields.Length && (joined == 0 || surplus > 0 && used + joined <= slips); joined++)
            {
                // A cell that can be read by itself is lost too where it is joined to what cannot.
                var parts = fields[first..(first + joined + 1)];
                var (text, odd) = Joined(parts, header[column] == BookWords.Symptoms || header[column] == BookWords.Remark);
                yield return (text, joined, Math.Max(1, parts.Count(part => part.Length > 0)) * CostOf(column, text) + odd);
            }
        }
    }

    private int CostOf(int column, string text) => header[column] is not { } known ? 0
        : text.Length == 0 ? known == BookWords.Date ? CostOfUnread : 0
        : canRead(known, text) ? 0 : CostOfUnread;

    // What stood between delimiters, and how many of these are neither in free words nor in a number.
    private (string Text, int Odd) Joined(string[] parts, bool isFree)
    {
        var (text, odd) = (parts[0], 0);
        for (var at = 1; at < parts.Length; at++)
        {
            var (one, next) = (parts[at - 1], parts[at]);
            var isNumber = delimiter == ',' && at == parts.Length - 1 && IsDigits(text) && IsDigits(next) && next.Length != 2;
            odd += isNumber || isFree && one.Length > 0 && next.Length > 0 ? 0 : 1;
            text += isNumber ? (next.Length == 1 ? "." : "") + next : one.Length == 0 || next.Length == 0 ? next : $"{delimiter} {next}";
        }

        return (text, odd);
    }

    // A decimal comma has one digit after it, a comma of thousands three.
    private static bool IsDigits(string text) => text.Length is > 0 and < 4 && text.All(char.IsAsciiDigit);

    // The least cost and in how many ways it is met; none is the default.
    private readonly record struct Ways(int Cost, double Count)
    {
        public Ways With(int cost) => this with { Cost = Cost + cost };

        public Ways Or(Ways other) => Count == 0 || other.Count > 0 && other.Cost < Cost ? other : other.Count == 0 || Cost < other.Cost ? this : this with { Count = Count + other.Count };
    }
}
