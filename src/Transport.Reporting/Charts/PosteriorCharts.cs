namespace Transport.Reporting;

/// <summary>Charts of posteriors.</summary>
public static class PosteriorCharts
{
    /// <summary>Each parameter before and after the data: how far a test narrowed what is known of people.</summary>
    public static Figure Contraction(MembranePosterior posterior)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        return new(
            "What the data say about each parameter",
            "Each row has a scale of its own: the bar is the 90 % interval of people before the test, the whisker this person's after it. A whisker as long as its bar is what was known before. Per 1.73 m² where the size of the body counts.",
            string.Join(" ", posterior.Parameters.Select(parameter =>
                $"{parameter.Name}: the data {parameter.Verdict.Words()}; {Digits.Fixed(100 * parameter.SpreadLeft, 0)} % of the spread is left.")),
            StripPanel.Of([.. posterior.Parameters.Select(Row)], "people, 90 % and median", "this person, 90 % and median"));
    }

    private static StripRow Row(PosteriorParameter parameter) => new(
        $"{parameter.Name}: the data {parameter.Verdict.Words()}",
        parameter.Unit.Replace(" per 1.73 m²", "", StringComparison.Ordinal),
        parameter.Posterior.Median,
        new(parameter.Posterior.Low, parameter.Posterior.High),
        new(parameter.Prior.Low, parameter.Prior.High),
        parameter.Prior.Median)
    {
        // Three significant digits of the smallest number of the row.
        Decimals = Math.Clamp(2 - (int)Math.Floor(Math.Log10(parameter.Prior.Low)), 0, 6),
    };
}
