namespace Transport.Reporting;

/// <summary>Charts of equilibration tests.</summary>
public static class EquilibrationCharts
{
    /// <summary>
    /// The indices beside the series that they were compared with: the chosen one, otherwise that of the age group and the strength. Null where nothing
    /// can be compared.
    /// </summary>
    /// <remarks>D/D0, ultrafiltration and sodium are only drawn against a series of the same strength, ultrafiltration at the same fill besides.</remarks>
    public static Figure? AgainstPopulation(EquilibrationIndices indices)
    {
        ArgumentNullException.ThrowIfNull(indices);
        var rows = Strips(indices);
        if (rows.Count == 0)
        {
            return null;
        }

        var population = indices.Comparison!.Population;
        return new(
            "This test beside a population",
            $"Bar: mean ± 1 SD of {population.Name} (n {population.Count?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not known"}; {(population.Evidence == Evidence.Read ? "read" : "from memory, not verified")}). {Whiskers(rows)}",
            string.Join(". ", rows.Select(StripSvg.Words)) + ".",
            StripPanel.Of(rows, population.Name, "this test"));
    }

    /// <summary>What a reader of the strips has to know of their whiskers, and of the series of the dip.</summary>
    internal static string Whiskers(IReadOnlyList<StripRow> rows) =>
        $"Whisker: ± 1 SD of the measurement{(rows.Any(row => row.Unit == "mL") ? " (D/P within a person, ultrafiltration 100 mL: choices)" : "")}.{(rows.Any(row => row.Unit == "mmol/L") ? " Series disagree about the sodium dip: another has 4.7 ± 2.3 mmol/L (Madrid 2010, read)." : "")}";

    /// <summary>A row for each index that can be compared: what of it may be drawn is decided where indices are compared (strength, fill, overfill, age group).</summary>
    internal static IReadOnlyList<StripRow> Strips(EquilibrationIndices indices)
    {
        return indices.Comparison is not { } comparison ? [] : [.. comparison.Rows.Select(row => row.Index.Name switch
        {
            "D/P creatinine" => Row(row, "D/P creatinine, 4 h", 2, indices.Options.WithinPersonStandardDeviation),
            "D/D0 glucose" => Row(row, "D/D0 glucose, 4 h", 2, null),
            "net ultrafiltration" => Row(row, "net ultrafiltration", 0, 100),
            _ => Row(row, "sodium dip, 60 min", 1, null),
        })];

        static StripRow Row(ComparedIndex compared, string name, int decimals, double? deviation)
        {
            var (index, reference) = (compared.Index, compared.Reference);
            var spread = deviation ?? index.StandardDeviation ?? 0;
            return new(
                name, index.Unit, index.Value, new(index.Value - spread, index.Value + spread),
                new(reference.Mean - reference.StandardDeviation, reference.Mean + reference.StandardDeviation), reference.Mean)
            {
                Decimals = decimals,
            };
        }
    }
}
