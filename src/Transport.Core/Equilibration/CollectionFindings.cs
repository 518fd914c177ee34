using static System.FormattableString;

namespace Transport;

/// <summary>What to read with care in a collection. Nothing is said of a target: value and noise stand beside symptoms, volume and nutrition.</summary>
internal static class CollectionFindings
{
    private const double HoursApart = 1;
    private const double OutputLow = 0.6;
    private const double OutputHigh = 1.4;
    private const double AnuricUltrafiltration = 750;
    private const double AnuricUrine = 100;

    public static IReadOnlyList<Finding> Of(CollectionIndices indices, MembraneThresholds limits) =>
    [
        .. PlasmaFindings.Of(indices.Collection.Plasma, indices.Collection.Drains.Any(drain => drain.Solution?.Agent == OsmoticAgent.Icodextrin), limits),
        .. All(indices, limits),
    ];

    private static IEnumerable<Finding> All(CollectionIndices indices, MembraneThresholds limits)
    {
        var day = indices.Collection;
        if (Math.Abs(day.Duration.TotalHours - 24) > HoursApart)
        {
            yield return new(Severity.Warning, "collection-not-a-day", "The collection is not of a day; results are scaled to 24 h, which a rhythm of day and night does not allow.")
            {
                Found = Invariant($"{day.Duration.TotalHours:0.#} h"),
                Expected = "23 to 25 h (choice)",
            };
        }

        if (day.Urine is null)
        {
            yield return new(Severity.Note, "collection-urine-missing", "Nothing is said about urine, so that residual function and totals are not given.");
        }

        if (day.PlasmaClock is null)
        {
            yield return new(Severity.Note, "collection-blood-time-missing",
                "The clock time of the blood is not given. Where a night of cycles is followed by a day with little or no exchange, plasma swings by about 5 % over the day (computed), and the dose with it; with exchanges by hand through day and night by about 1 % (computed).");
        }

        if (indices.CreatinineOutput is { } output)
        {
            var expected = day.Patient.Sex == Sex.Male ? 28 - 0.2 * day.Patient.AgeYears : 23.8 - 0.17 * day.Patient.AgeYears;
            if (day.Patient.AgeYears >= limits.AdultAge.Value && (output.Value < OutputLow * expected || output.Value > OutputHigh * expected))
            {
                yield return new(Severity.Warning, "collection-creatinine-output-unusual",
                    "Creatinine in drains and urine is far from what age, sex and weight let expect: a bag or urine may be missing or counted twice, or muscle is unusual.")
                {
                    Found = Invariant($"{output.Value:0.0} mg/kg/day"),
                    Expected = Invariant($"{OutputLow * expected:0} to {OutputHigh * expected:0} mg/kg/day (choice around a formula from memory)"),
                };
            }
        }

        if (indices.ProteinClearance is { } clearance && clearance.Value > limits.HighProteinClearance.Value)
        {
            yield return new(Severity.Note, "protein-loss-high",
                "Protein loss is high; it goes with large-pore flow, inflammation and venous pressure, and one measurement does not tell which.")
            {
                Field = clearance.Name,
                Found = Invariant($"{clearance.Value:0} mL/day"),
                Expected = $"at most {limits.HighProteinClearance}",
            };
        }

        if (day.Urine is { } urine && urine.Volume.Milliliters < AnuricUrine && indices.NetUltrafiltration is { } net && net.Value < AnuricUltrafiltration)
        {
            yield return new(Severity.Warning, "daily-ultrafiltration-low-without-urine",
                "Without urine, less than this a day went with higher mortality in one series; look at volume state, and at what the person drinks.")
            {
                Field = net.Name,
                Found = Invariant($"{net.Value:0} mL/day"),
                Expected = Invariant($"at least {AnuricUltrafiltration:0} mL/day (Perit Dial Int 2006;26:458-465; read)"),
            };
        }
    }
}
