namespace Transport.Reporting;

/// <summary>Charts of equilibration tests.</summary>
public static class EquilibrationCharts
{
    /// <summary>
    /// The indices beside a series of people tested at the same strength; where there is none, D/P creatinine alone beside the series of the class.
    /// Null where nothing can be compared.
    /// </summary>
    /// <remarks>D/D0, ultrafiltration and sodium are only drawn against a series of the same strength, ultrafiltration at the same fill besides.</remarks>
    public static Figure? AgainstPopulation(EquilibrationIndices indices)
    {
        ArgumentNullException.ThrowIfNull(indices);
        if (indices.Classification is not { } classification)
        {
            return null;
        }

        var solution = indices.Test.Solution;
        var population = classification.Population.IsOfStrength(solution)
            ? classification.Population
            : ReferencePopulations.All.FirstOrDefault(series => series.DialysateToInitialGlucose is not null && series.IsOfStrength(solution)
                && series.IsOfChildren == classification.Population.IsOfChildren)
                ?? classification.Population;

        // What of it may be drawn is decided where indices are compared: strength, fill, overfill, age group.
        var comparable = PopulationComparison.Of(indices, population).Rows.ToDictionary(row => row.Index.Name);
        var rows = new List<StripRow>();
        Add(indices.DialysateToPlasmaCreatinine, "D/P creatinine, 4 h", 2, classification.StandardDeviation);
        Add(indices.DialysateToInitialGlucose, "D/D0 glucose, 4 h", 2, null);
        Add(indices.NetUltrafiltration, "net ultrafiltration", 0, 100);
        Add(indices.SodiumDip, "sodium dip, 60 min", 1, null);

        return rows.Count == 0
            ? null
            : new(
                "This test beside a population",
                $"Bar: mean ± 1 SD of {population.Name} (n {population.Count?.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "not known"}; {(population.Evidence == Evidence.Read ? "read" : "from memory, not verified")}). Whisker: ± 1 SD of the measurement{(rows.Any(row => row.Unit == "mL") ? " (ultrafiltration: 100 mL, a choice)" : "")}.{(rows.Any(row => row.Unit == "mmol/L") ? " Series disagree about the sodium dip: another has 4.7 ± 2.3 mmol/L (Madrid 2010, read)." : "")}",
                string.Join(". ", rows.Select(row => $"{row.Name}: {Digits.Fixed(row.Value, row.Decimals)} {row.Unit}, population {Digits.Fixed(row.Population.Lower, row.Decimals)} to {Digits.Fixed(row.Population.Upper, row.Decimals)}")) + ".",
                StripPanel.Of(rows, population.Name, "this test"));

        void Add(IndexValue? index, string name, int decimals, double? deviation)
        {
            if (index is not null && comparable.TryGetValue(index.Name, out var compared))
            {
                var reference = compared.Reference;
                var spread = deviation ?? index.StandardDeviation ?? 0;
                rows.Add(new(
                    name,
                    index.Unit,
                    index.Value,
                    new(index.Value - spread, index.Value + spread),
                    new(reference.Mean - reference.StandardDeviation, reference.Mean + reference.StandardDeviation),
                    reference.Mean)
                {
                    Decimals = decimals,
                });
            }
        }
    }
}
