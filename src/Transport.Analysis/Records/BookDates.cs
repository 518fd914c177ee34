namespace Transport.Analysis;

/// <summary>Which dates of a book do not fit their place, and which day their place would be.</summary>
/// <remarks>
/// A book is written day after day, so the order of its rows is a second witness to its dates. Where the two differ the row's own date may be a slip (last year's number in
/// January, a month that was copied). No date is put right; a row in doubt is told, and counts by its place where that is later.
/// </remarks>
internal static class BookDates
{
    // Choices. A row put in late or two that are swapped are no slip; a book that leaps over half a year and comes back within a week of rows is.
    private const int DaysOutOfOrder = 3;
    private const int DaysOfLeap = 180;
    private const int FewestOfRun = 7;
    private const int DaysOfPause = 14;
    private const int DaysToNext = 3;
    private const double MostOutOfOrder = 0.2;
    private const int FirstYear = 1900;
    private const int LastYear = 2200;

    /// <summary>How a date does not fit.</summary>
    /// <param name="Place">The day by its place in the book.</param>
    /// <param name="IsLeap">Whether it is so far from all others that no chart can hold it.</param>
    /// <param name="Slip">Of which rows it is one, where these would go on but for the number of their year; otherwise null.</param>
    public readonly record struct Misfit(DateOnly Place, bool IsLeap, YearSlip? Slip = null);

    /// <summary>Several rows with the number of another year.</summary>
    /// <param name="FirstRow">The first of them in the file.</param>
    /// <param name="LastRow">The last of them.</param>
    /// <param name="Years">1 where their year seems to be one behind, -1 where one ahead.</param>
    public sealed record YearSlip(int FirstRow, int LastRow, int Years);

    /// <summary>The rows whose date does not fit, by their number.</summary>
    /// <param name="rows">The rows as they stand, each with its date.</param>
    /// <param name="isNewestOnTop">As <see cref="IsNewestOnTop"/> has it.</param>
    public static IReadOnlyDictionary<int, Misfit> Misfits(IReadOnlyList<(int Row, DateOnly Date)> rows, bool isNewestOnTop)
    {
        var ordered = isNewestOnTop ? rows.Reverse().ToList() : [.. rows];
        var misfits = OfAnotherYear(ordered);
        ordered.RemoveAll(row => misfits.ContainsKey(row.Row));
        var chain = Chain(ordered);
        if (ordered.Count == 0 || ordered.Count - chain.Count > Math.Max(1, MostOutOfOrder * ordered.Count))
        {
            return misfits;
        }

        // Runs without a leap; the longest are true, a few rows beyond a leap are in doubt.
        var runs = new List<List<int>>();
        foreach (var at in chain)
        {
            if (runs.Count == 0 || ordered[at].Date.DayNumber - ordered[runs[^1][^1]].Date.DayNumber > DaysOfLeap)
            {
                runs.Add([]);
            }

            runs[^1].Add(at);
        }

        var longest = runs.Max(run => run.Count);
        var main = runs.FindLast(run => run.Count == longest)!;
        var certain = runs.Where(run => run == main || run.Count >= FewestOfRun).SelectMany(run => run).ToList();
        var leaps = chain.Except(certain).ToHashSet();
        var paused = Paused(ordered, certain);
        certain = [.. certain.Except(paused)];
        var (first, last) = (ordered[certain[0]].Date, ordered[certain[^1]].Date);
        var isCertain = certain.ToHashSet();
        for (var at = 0; at < ordered.Count; at++)
        {
            var (row, date) = ordered[at];
            if (isCertain.Contains(at))
            {
                continue;
            }

            var place = PlaceOf(certain.Where(known => known < at).Select(known => ordered[known].Date).LastOrDefault(), certain.Where(known => known > at).Select(known => ordered[known].Date).FirstOrDefault());
            var isLeap = leaps.Contains(at) || paused.Contains(at) || date.DayNumber - last.DayNumber > DaysOfLeap || first.DayNumber - date.DayNumber > DaysOfLeap;
            if (isLeap || Math.Abs(date.DayNumber - place.DayNumber) > DaysOutOfOrder)
            {
                // The later of the two, where both can be: what may be of today is not taken for history.
                misfits[row] = new(!isLeap && date > place && date <= last ? date : place, isLeap);
            }
        }

        return misfits;
    }

    /// <summary>Whether more rows are in order from below than from above.</summary>
    public static bool IsNewestOnTop(IReadOnlyList<(int Row, DateOnly Date)> rows) => Chain([.. rows.Reverse()]).Count > Chain(rows).Count;

    /// <summary>Whether a book can be of this day: a year far from ours is a slip, whatever its row.</summary>
    public static bool IsOfBook(DateOnly date) => date.Year is >= FirstYear and <= LastYear;

    /// <summary>The day of a row between two others: the day after the one, not after the other. A default stands for none.</summary>
    public static DateOnly PlaceOf(DateOnly before, DateOnly after) => (before == default, after == default) switch
    {
        (true, true) => default,
        (true, false) => after.AddDays(-1),
        (false, false) when before.AddDays(1) > after => before,
        _ => before.AddDays(1),
    };

    // Several rows that would follow those before, and be followed by those after, but for the number of their year: what fewer rows say is in doubt, and of as many the later.
    private static Dictionary<int, Misfit> OfAnotherYear(List<(int Row, DateOnly Date)> ordered)
    {
        var off = new int[ordered.Count];
        for (var at = 1; at < ordered.Count; at++)
        {
            var (before, date) = (ordered[at - 1].Date, ordered[at].Date);
            off[at] = off[at - 1] + (IsNext(before, date.AddYears(1), DaysOfPause) ? 1 : IsNext(before, date.AddYears(-1), DaysToNext) ? -1 : 0);
        }

        var misfits = new Dictionary<int, Misfit>();
        var usual = off.GroupBy(years => years).MaxBy(rows => rows.Count())?.Key ?? 0;
        for (var (from, to) = (0, 0); from < off.Length; from = to)
        {
            to = Array.FindIndex(off, from, years => years != off[from]) is var next and >= 0 ? next : off.Length;
            var (one, other) = (ordered[from].Row, ordered[to - 1].Row);

            // As many at the end, a year on, are somebody who came back.
            var isReturn = off[from] < usual && to == off.Length && to - from >= FewestOfRun;
            if (to - from > 1 && !isReturn && off[from] - usual is 1 or -1)
            {
                var slip = new YearSlip(Math.Min(one, other), Math.Max(one, other), off[from] - usual);
                foreach (var (row, date) in ordered[from..to])
                {
                    misfits[row] = new(date.AddYears(slip.Years), true, slip);
                }
            }
        }

        return misfits;

        static bool IsNext(DateOnly before, DateOnly date, int days) => date.DayNumber - before.DayNumber is var later && later >= 0 && later <= days;
    }

    // A few last rows after a pause: as soon the same days with another month written, where without whole months they would go on the next day.
    private static HashSet<int> Paused(List<(int Row, DateOnly Date)> ordered, List<int> certain)
    {
        for (var k = certain.Count - 1; k > 0 && certain.Count - k < FewestOfRun; k--)
        {
            var (before, after) = (ordered[certain[k - 1]].Date, ordered[certain[k]].Date);
            if (after.DayNumber - before.DayNumber <= DaysOfPause)
            {
                continue;
            }

            var goesOn = Enumerable.Range(1, 12).Select(months => after.AddMonths(-months).DayNumber - before.DayNumber).Any(days => days is > 0 and <= DaysToNext);
            return goesOn ? [.. certain.Skip(k)] : [];
        }

        return [];
    }

    // The longest run of rows whose dates do not fall (patience sorting); places in the list.
    private static List<int> Chain(IReadOnlyList<(int Row, DateOnly Date)> rows)
    {
        var tails = new List<int>();
        var previous = new int[rows.Count];
        for (var at = 0; at < rows.Count; at++)
        {
            var (low, high) = (0, tails.Count);
            while (low < high)
            {
                var middle = (low + high) / 2;
                (low, high) = rows[tails[middle]].Date <= rows[at].Date ? (middle + 1, high) : (low, middle);
            }

            previous[at] = low == 0 ? -1 : tails[low - 1];
            if (low == tails.Count)
            {
                tails.Add(at);
            }
            else
            {
                tails[low] = at;
            }
        }

        var chain = new List<int>();
        for (var at = tails.Count == 0 ? -1 : tails[^1]; at >= 0; at = previous[at])
        {
            chain.Add(at);
        }

        chain.Reverse();
        return chain;
    }
}
