namespace Transport.Reporting;

/// <summary>Reports of the design of a test.</summary>
public static class DesignReports
{
    /// <summary>The advice in words, each feasible sample alone, and the best after the best.</summary>
    public static ReportBlock Of(TestAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        var heading = $"#expected SD{(advice.Target.Unit.Length > 0 ? ", " + advice.Target.Unit : "")}";
        return new ReportBlock()
            .Sentence(advice.Words)
            .Table(new(
                ["samples, the most telling first", heading],
                [.. advice.Path.Select((step, i) => (IReadOnlyList<string>)[i == 0 ? "what is known now" : "and " + step.Samples[^1].Name, Digits.Of(step.Target)])]))
            .Folded("Each sample alone", new(
                ["sample", heading],
                [.. advice.Each.Select(step => (IReadOnlyList<string>)[step.Samples[0].Name, Digits.Of(step.Target)])]))
            .Small("Expected before anything is measured, within this model: not its own error. Whether a sample is worth its burden is for the clinic to judge.");
    }
}
