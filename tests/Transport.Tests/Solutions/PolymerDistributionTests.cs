namespace Transport.Tests.Solutions;

public sealed class PolymerDistributionTests
{
    private static readonly PolymerDistribution Icodextrin = PolymerDistribution.Icodextrin;

    [Fact]
    public void The_fractions_in_code_are_those_in_reference_data()
    {
        // Computed with another program from the same log-normal; printed to two and three decimals, so half a digit of each.
        var rows = ReferenceData.Rows("icodextrin-fractions").Where(row => row["item"] == "fresh_solution").ToList();
        var fractions = Icodextrin.Fractions.Skip(1).ToList();
        Assert.Equal(rows.Count, 3 * fractions.Count);
        foreach (var (fraction, i) in fractions.Select((fraction, i) => (fraction, i)))
        {
            Assert.Equal(fraction.Solute.Name, "icodextrin " + rows[3 * i]["condition"]);
            Assert.Equal(rows[3 * i].Number("value"), fraction.GramsPerLiter, 0.00501);
            Assert.Equal(rows[3 * i + 1].Number("value"), fraction.Concentration.MillimolesPerLiter, 0.000501);
            Assert.Equal(rows[3 * i + 2].Number("value"), fraction.Solute.MolarMassGramsPerMole, 0.501);
        }
    }

    [Fact]
    public void Mass_number_and_means_are_those_that_were_asked_for()
    {
        // Label: 75 g/L, Mn 5000 to 6500, Mw 13,000 to 19,000 g/mol (read). Mass and number are exact; Mw loses the spread within a fraction: 5 %.
        Assert.Equal(75.0, Icodextrin.GramsPerLiter, 1e-10);
        Assert.Equal(5700.0, Icodextrin.NumberMeanGramsPerMole, 1e-8);
        Assert.InRange(Icodextrin.WeightMeanGramsPerMole, 0.95 * 16_400, 16_400);
        Assert.InRange(Icodextrin.WeightMeanGramsPerMole, 13_000, 19_000);
    }

    [Fact]
    public void With_its_electrolytes_the_solution_has_the_labelled_osmolarity()
    {
        // 282 to 286 mOsm/L on a label (read): sodium 132, chloride 96, lactate 40, calcium 1.75, magnesium 0.25 and the chains.
        Assert.InRange(132 + 96 + 40 + 1.75 + 0.25 + Icodextrin.Chains.MillimolesPerLiter, 282, 286);
    }

    [Theory]
    [InlineData(4457, 16.1)]
    [InlineData(9479, 22.9)]
    public void The_radius_of_a_chain_is_the_tabulated_one(double molarMass, double radius) =>
        Assert.Equal(radius, PolymerDistribution.Chain("dextran", molarMass).RadiusAngstrom, 0.051); // Membranes 2021;11:331, Table 1 (read), half a digit

    [Fact]
    public void A_regular_users_plasma_holds_what_was_measured()
    {
        // Register text (read): maltose 1.1 g/L, chains of more than nine units (1477 g/mol) 1.8 g/L. Exact.
        var plasma = Icodextrin.InPlasmaOfRegularUser();
        Assert.Equal(1.1, plasma.Where(pair => pair.Key.MolarMassGramsPerMole < 400).Sum(pair => pair.Value.GramsPerLiter(pair.Key)), 1e-12);
        Assert.Equal(1.8, plasma.Where(pair => pair.Key.MolarMassGramsPerMole > 1477).Sum(pair => pair.Value.GramsPerLiter(pair.Key)), 1e-12);
        Assert.All(plasma.Keys, chain => Assert.Contains(chain, Icodextrin.Fractions.Select(fraction => fraction.Solute)));
    }

    [Fact]
    public void Another_distribution_can_be_used_and_an_impossible_one_cannot()
    {
        var narrow = PolymerDistribution.LogNormal("narrow", 6000, 7000, 40, [5000]);
        Assert.Equal(40.0, narrow.GramsPerLiter, 1e-10);
        Assert.Same(narrow, (DialysisSolution.Icodextrin with { Polymer = narrow }).Polymer);
        Assert.Throws<ArgumentOutOfRangeException>(() => PolymerDistribution.LogNormal("x", 6000, 6000, 40, [5000]));
        Assert.Throws<ArgumentException>(() => PolymerDistribution.LogNormal("x", 6000, 7000, 40, [5000, 5000]));
        Assert.Throws<ArgumentException>(() => PolymerDistribution.LogNormal("x", 6000, 7000, 40, [1e-3]));
        Assert.Throws<ArgumentException>(() => new PolymerDistribution());
        Assert.Throws<ArgumentException>(() => new PolymerDistribution(narrow.Fractions.Reverse()));
        Assert.Throws<ArgumentException>(() => DialysisSolution.Icodextrin with { Polymer = null });
        Assert.Throws<ArgumentException>(() => DialysisSolution.Glucose136 with { Polymer = narrow });
    }
}
