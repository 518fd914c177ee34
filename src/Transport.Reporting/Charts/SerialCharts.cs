using System.Globalization;

namespace Transport.Reporting;

/// <summary>Charts of one person's tests over time.</summary>
public static class SerialCharts
{
    private const int MostPanels = 3;

    // Water before solutes: of all that is followed, what a reader looks for first.
    private static readonly string[] First = ["net ultrafiltration", "free water at 60 min", "D/P creatinine", "sodium dip", "sodium dip, corrected for diffusion"];

    /// <summary>One panel for each of the three indices that tell most, with ± 1 SD within a person; null where nothing was followed.</summary>
    public static Figure? Courses(SerialTests series)
    {
        ArgumentNullException.ThrowIfNull(series);
        var courses = series.Courses
            .OrderBy(course => Array.IndexOf(First, course.Name) is >= 0 and var rank ? rank : First.Length).Take(MostPanels).ToList();
        if (courses.Count == 0)
        {
            return null;
        }

        var first = courses.Min(course => course.Points[0].Date);
        return new(
            "Over time",
            "Whisker: ± 1 SD of one test within a person (memory of low confidence, and choices). Points are joined to be followed, not because anything is known in between.",
            string.Join(". ", courses.Select(course => $"{course.Name}: {string.Join(", ", course.Points.Select(point => $"{PageWords.Value(point.Index)} on {PageWords.Date(point.Date)}"))}")) + ".",
            [.. courses.Select(course => PanelOf(course, first))])
        { Columns = Math.Min(3, courses.Count), Key = KeyPlacement.None };
    }

    private static Panel PanelOf(SerialIndex course, DateOnly first)
    {
        var within = course.WithinPerson.Value;
        double[] years = [.. course.Points.Select(point => (point.Date.DayNumber - first.DayNumber) / 365.25)];
        return new(new Axis("years since " + first.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), ""), new Axis(PageIndices.Short(course.Name), course.WithinPerson.Unit))
        {
            RelativeHeight = 0.5,
            Series =
            [
                new(course.Name, years, [.. course.Points.Select(point => point.Index.Value)])
                {
                    Marker = MarkerShape.Circle,
                    Weight = 1,
                    YWhiskers = [.. course.Points.Select(point => new Extent(point.Index.Value - within, point.Index.Value + within))],
                    Notes = [.. course.Points.Select(point => $"{PageWords.Date(point.Date)}: {PageWords.Value(point.Index)}")],
                },
            ],
        };
    }
}
