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

    /// <summary>
    /// The profile of one parameter: how much worse the best fit becomes as it is held elsewhere, as the signed root, which is straight where the data are as good as
    /// linear. Where the curve stays between the lines the data set no limit.
    /// </summary>
    public static Figure Profile(ParameterProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        var (name, unit) = (profile.Name, profile.Unit);
        var limit = Math.Sqrt(profile.Limit);
        double[] roots = [.. profile.Points.Select(point => Math.Sign(point.Value - profile.Estimate) * Math.Min(Math.Sqrt(Math.Max(0, point.Rise)), 2 * limit))];
        var share = FormattableString.Invariant($"{Digits.Fixed(100 * profile.Confidence, 0)} %");
        return new(
            $"How firmly the data hold the {name}",
            $"Each point: the best fit with the {name} held there and everything else free, prior included where the fit used it. Between the lines lie the values that a {share} interval holds.",
            $"{name}: estimate {Digits.Of(profile.Estimate)} {unit}; lower end {End(profile.Low)}, upper end {End(profile.High)}.",
            new Panel(new(name, unit), new("signed root of the rise of the deviance", "") { Range = new(-2 * limit, 2 * limit) })
            {
                Series = [new(name, [.. profile.Points.Select(point => point.Value)], roots) { Marker = MarkerShape.Circle }],
                Marks = [Mark.AtY(limit, share), Mark.AtY(-limit, share), Mark.AtX(profile.Estimate, "estimate")],
            })
        {
            Key = KeyPlacement.None,
        };

        string End(double? value) => value is { } known ? $"{Digits.Of(known)} {unit}".TrimEnd() : "open";
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
