namespace Transport.Reporting;

/// <summary>Charts of the design of a test.</summary>
public static class DesignCharts
{
    /// <summary>Expected precision of the target against the number of samples, the best one first, then the best after it.</summary>
    public static Figure Precision(TestAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        var path = advice.Path;
        string[] added = ["what is known now", .. path.Skip(1).Select(step => step.Samples[^1].Name)];
        return new(
            $"What further samples would tell of the {advice.Target.Name}",
            "Each sample is the most telling one after those before it. Expected values, for measurements with the stated errors.",
            string.Join(" ", path.Select((step, i) => $"{i}: {added[i]}, {Digits.Of(step.Target)} {advice.Target.Unit}.")),
            new Panel(new("samples", ""), new("expected standard deviation", advice.Target.Unit))
            {
                Series =
                [
                    new(advice.Target.Name, [.. path.Select((_, i) => (double)i)], [.. path.Select(step => step.Target)])
                    {
                        Marker = MarkerShape.Circle,
                        Notes = added,
                    },
                ],
            });
    }
}
