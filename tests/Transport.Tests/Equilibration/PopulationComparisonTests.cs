using static Transport.Tests.Equilibration.InventedTests;

namespace Transport.Tests.Equilibration;

public sealed class PopulationComparisonTests
{
    [Fact]
    public void A_strong_test_is_compared_with_the_strong_series_index_by_index()
    {
        // D/P 0.79 against 0.73 ± 0.10: z 0.60, percentile 72.57 (computed). UF 675 is the mean.
        var comparison = EquilibrationIndices.Of(Strong(0.79, 675, 8.4)).Comparison!;

        Assert.Equal("Italy 2019, 3.86 %", comparison.Population.Name);
        Assert.Equal(["D/P creatinine", "D/D0 glucose", "net ultrafiltration", "sodium dip"], comparison.Rows.Select(row => row.Index.Name));
        Assert.Equal(0.60, comparison.Rows[0].ZScore, 1e-9);
        Assert.Equal(72.57, comparison.Rows[0].Percentile, 0.005);
        Assert.Equal(50, comparison.Rows[2].Percentile, 1e-9);
        Assert.Empty(comparison.NotComparable);
    }

    [Fact]
    public void Only_D_over_P_crosses_strengths()
    {
        var options = EquilibrationIndicesOptions.Default with { Population = ReferencePopulations.Italy2019 };
        var comparison = EquilibrationIndices.Of(Middle(0.70, 0.38), options).Comparison!;

        Assert.Equal("D/P creatinine", Assert.Single(comparison.Rows).Index.Name);
        Assert.Equal(["D/D0 glucose", "net ultrafiltration", "sodium dip"], comparison.NotComparable.Select(missing => missing.Name));
    }

    [Theory]
    [InlineData(FillBasis.Measured, 2100, true)]
    [InlineData(FillBasis.Measured, 2101, false)]
    [InlineData(FillBasis.Label, 2000, false)]
    public void Ultrafiltration_needs_the_same_fill_and_a_known_flush(FillBasis basis, double fill, bool expected)
    {
        var comparison = EquilibrationIndices.Of(Strong(0.70, 600, 8) with { FillBasis = basis, InstilledVolume = Volume.FromMilliliters(fill) }).Comparison!;
        Assert.Equal(expected, comparison.Rows.Any(row => row.Index.Name == "net ultrafiltration"));
    }

    [Fact]
    public void A_child_is_never_compared_with_adults()
    {
        var child = Patient.Example with { AgeYears = 8, Height = Length.FromCentimeters(128), Weight = Mass.FromKilograms(26) };
        var test = Middle(0.70, 0.38) with { Patient = child };

        Assert.True(EquilibrationIndices.Of(test).Comparison!.Population.IsOfChildren);
        var adults = EquilibrationIndices.Of(test, EquilibrationIndicesOptions.Default with { Population = ReferencePopulations.NorthAmerica1987 }).Comparison!;
        Assert.Empty(adults.Rows);
    }

    [Fact]
    public void An_estimated_D0_is_not_compared()
    {
        var test = Middle(0.70, 0.38);
        var comparison = EquilibrationIndices.Of(test with { Dialysate = [.. test.Dialysate.Skip(1)] }).Comparison!;
        Assert.Contains(comparison.NotComparable, missing => missing.ToString() == "D/D0 glucose: D0 was not measured");
    }
}
