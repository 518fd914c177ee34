namespace Transport.Reporting;

/// <summary>Reports of posteriors.</summary>
public static class PosteriorReports
{
    /// <summary>Each parameter before and after the data, what the data say about it, and whether the draws may be believed.</summary>
    public static ReportBlock Of(MembranePosterior posterior)
    {
        ArgumentNullException.ThrowIfNull(posterior);
        return new ReportBlock()
            .Sentence(posterior.Fit.Summary)
            .Table(new(
                ["parameter", "unit", "#this person\n90 % interval", "#people\n90 % interval", "#spread left, %", "the data"],
                [.. posterior.Parameters.Select(parameter => (IReadOnlyList<string>)
                [
                    parameter.Name,
                    parameter.Unit,
                    Interval(parameter.Posterior),
                    Interval(parameter.Prior),
                    Digits.Fixed(100 * parameter.SpreadLeft, 0),
                    parameter.Verdict.Words(),
                ])]))
            .FindingList(posterior.Findings)
            .Folded("Whether to believe the draws", new(
                ["parameter", "#R-hat", "#effective draws, middle", "#effective draws, tails"],
                [.. posterior.Parameters.Select(parameter => (IReadOnlyList<string>)
                [
                    parameter.Name,
                    Digits.Fixed(parameter.RHat, 4),
                    Digits.Fixed(parameter.BulkEffectiveDraws, 0),
                    Digits.Fixed(parameter.TailEffectiveDraws, 0),
                ])]))
            .Small($"{posterior.DrawCount} draws in four chains, seed {posterior.Seed}. They hold the doubt about the parameters, given this model; not the model's own.");

        static string Interval(Band<double> band) => $"{Digits.Of(band.Median)}\n{Digits.Of(band.Low)} to {Digits.Of(band.High)}";
    }
}
