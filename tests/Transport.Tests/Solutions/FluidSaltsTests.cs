namespace Transport.Tests.Solutions;

/// <summary>
/// Vector O: ions and osmolarity of a label's salts, worked outside this library from the salts of a label (salts read, ions computed). Printed digits; half the last one
/// is the tolerance.
/// </summary>
public sealed class FluidSaltsTests
{
    // NaCl 538, sodium lactate 448, CaCl2·2H2O 25.7 (18.3), MgCl2·6H2O 5.08 mg/dL (read).
    private static FluidSalts Label(double calciumChloride, double glucoseMonohydrate) => new()
    {
        SodiumChloride = Grams(5.38),
        SodiumLactate = Grams(4.48),
        CalciumChlorideDihydrate = Grams(calciumChloride),
        MagnesiumChlorideHexahydrate = Grams(0.0508),
        GlucoseMonohydrate = Grams(glucoseMonohydrate),
    };

    [Fact]
    public void Vector_O_the_salts_of_a_label_give_its_ions()
    {
        var ions = Label(0.257, 0).ToComposition();

        Assert.Equal(132.034, ions.Sodium.MillimolesPerLiter, 0.0005);
        Assert.Equal(39.979, ions.Lactate.MillimolesPerLiter, 0.0005);
        Assert.Equal(1.7482, ions.Calcium.MillimolesPerLiter, 0.00005);
        Assert.Equal(0.2499, ions.Magnesium.MillimolesPerLiter, 0.00005);
        Assert.Equal(96.052, ions.Chloride.MillimolesPerLiter, 0.0005);
        Assert.Equal(1.2448, Label(0.183, 0).ToComposition().Calcium.MillimolesPerLiter, 0.00005);
        Assert.Equal(95.045, Label(0.183, 0).ToComposition().Chloride.MillimolesPerLiter, 0.0005);
    }

    [Theory]
    [InlineData(0.257, 15, 345.755)]
    [InlineData(0.257, 25, 396.216)]
    [InlineData(0.257, 42.5, 484.524)]
    [InlineData(0.183, 15, 344.244)]
    [InlineData(0.183, 25, 394.706)]
    [InlineData(0.183, 42.5, 483.013)]
    public void Vector_O_with_glucose_it_gives_the_osmolarity(double calciumChloride, double monohydrate, double expected) =>
        Assert.Equal(expected, Label(calciumChloride, monohydrate).ToComposition().Osmolarity.MillimolesPerLiter, 0.0005);

    // Two labelling conventions: 42.5 g/L is 214.5 mmol/L as the monohydrate and 235.9 as anhydrous glucose (computed): 273.25 + 235.9 = 509.1 mOsm/L was printed (read).
    [Fact]
    public void Anhydrous_glucose_of_the_same_weight_is_a_tenth_more()
    {
        var anhydrous = new FluidSalts { Glucose = Grams(42.5) }.ToComposition().Glucose;
        Assert.Equal(235.9, anhydrous.MillimolesPerLiter, 0.05);
        Assert.Equal(1.1, anhydrous / Label(0, 42.5).ToComposition().Glucose, 1e-4);
    }

    [Fact]
    public void Salts_are_neutral_and_become_a_solution()
    {
        var composition = Label(0.183, 25).ToComposition();
        Assert.Equal(0, composition.ChargeBalance.MillimolesPerLiter, 1e-12);

        var solution = composition.ToSolution("lactate A");
        Assert.Equal(composition.Sodium, solution.Sodium);
        Assert.Equal(composition.Calcium, solution.Others[Solutes.Calcium]);
        Assert.False(solution.Others.ContainsKey(Solutes.Bicarbonate));
        Assert.Equal("sodium 132.03, calcium 1.24, magnesium 0.25, chloride 95.04, lactate 39.98, glucose 126.15 mmol/L; 395 mOsm/L", composition.ToString());
    }

    [Fact]
    public void Bicarbonate_counts_with_its_sodium()
    {
        var ions = new FluidSalts { SodiumBicarbonate = Grams(2.1) }.ToComposition();
        Assert.Equal(25.0, ions.Bicarbonate.MillimolesPerLiter, 0.005); // 2.1 g/L of 84.007 g/mol
        Assert.Equal(ions.Bicarbonate, ions.Sodium);
    }

    [Fact]
    public void Nothing_weighs_less_than_nothing() => Assert.Throws<ArgumentOutOfRangeException>(() => new FluidSalts { SodiumChloride = Grams(-1) });

    private static MassConcentration Grams(double perLiter) => MassConcentration.FromGramsPerLiter(perLiter);
}
