using System.Globalization;

namespace Transport.Analysis;

/// <summary>Which of two numbers of a date is the day.</summary>
internal enum DateOrder
{
    DayFirst,
    MonthFirst,
}

/// <summary>Dates as people and spreadsheets write them.</summary>
internal static class SheetDate
{
    private static readonly string[] CertainDates =
        ["yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "yyyy-M-d HH:mm:ss", "d.M.yyyy", "d MMM yyyy", "d-MMM-yyyy", "d MMMM yyyy", "MMM d, yyyy", "MMMM d, yyyy"];

    private static readonly string[] DayFirst = ["d/M/yyyy", "d-M-yyyy"];

    private static readonly string[] MonthFirst = ["M/d/yyyy", "M-d-yyyy"];

    /// <summary>The date; null where there is none. Where day and month may be swapped and no order settles it, the other reading too.</summary>
    public static DateOnly? Read(string text, DateOrder? order, out DateOnly? other)
    {
        other = null;
        if (Parsed(text, CertainDates) is { } certain)
        {
            return certain;
        }

        var (dayFirst, monthFirst) = (Parsed(text, DayFirst), Parsed(text, MonthFirst));
        if (dayFirst is { } one && monthFirst is { } two && one != two)
        {
            if (order is { } settled)
            {
                return settled == DateOrder.DayFirst ? one : two;
            }

            other = two;
            return one;
        }

        return dayFirst ?? monthFirst;
    }

    /// <summary>The order that a date shows by its form; null where it shows none.</summary>
    public static DateOrder? OrderShownBy(string text) => (Parsed(text, DayFirst), Parsed(text, MonthFirst)) switch
    {
        ({ }, null) => DateOrder.DayFirst,
        (null, { }) => DateOrder.MonthFirst,
        _ => null,
    };

    private static DateOnly? Parsed(string text, string[] forms) =>
        DateOnly.TryParseExact(text, forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out var date) ? date : null;
}
