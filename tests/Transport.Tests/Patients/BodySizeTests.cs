namespace Transport.Tests.Patients;

/// <summary>Worked cases outside this code (computed), printed to five decimals for surfaces and four for water.</summary>
public sealed class BodySizeTests
{
    private static readonly Length Height = Length.FromCentimeters(170);
    private static readonly Mass Weight = Mass.FromKilograms(70);

    [Fact]
    public void Four_surface_formulas_for_170_cm_and_70_kg()
    {
        Assert.Equal(1.80971, BodySize.SurfaceByDuBois(Height, Weight).SquareMeters, 5e-6);
        Assert.Equal(1.81812, BodySize.SurfaceByMosteller(Height, Weight).SquareMeters, 5e-6);
        Assert.Equal(1.83129, BodySize.SurfaceByGehanGeorge(Height, Weight).SquareMeters, 5e-6);
        Assert.Equal(1.82568, BodySize.SurfaceByHaycock(Height, Weight).SquareMeters, 5e-6);
    }

    [Fact]
    public void Watson_for_a_man_of_60_years_tells_0_09516_from_the_often_copied_0_09156()
    {
        // 38.5294 L with the abstract's coefficient, 38.7454 L with two digits swapped: the tolerance must stay below 0.1 L.
        Assert.Equal(38.5294, BodySize.WaterByWatson(Sex.Male, 60, Height, Weight).Liters, 5e-5);
    }

    [Fact]
    public void Watson_for_a_woman_does_not_ask_her_age()
    {
        var water = BodySize.WaterByWatson(Sex.Female, 60, Length.FromCentimeters(165), Mass.FromKilograms(65));

        Assert.Equal(31.5705, water.Liters, 5e-5);
        Assert.Equal(water, BodySize.WaterByWatson(Sex.Female, 30, Length.FromCentimeters(165), Mass.FromKilograms(65)));
    }

    [Fact]
    public void Hume_and_Weyers_for_a_man_and_a_woman()
    {
        // By hand: 33.11362 + 20.77495 − 14.012934 and 56.84910 + 11.947585 − 35.270121.
        Assert.Equal(39.875636, BodySize.WaterByHumeWeyers(Sex.Male, Height, Weight).Liters, 5e-7);
        Assert.Equal(
            33.526564, BodySize.WaterByHumeWeyers(Sex.Female, Length.FromCentimeters(165), Mass.FromKilograms(65)).Liters, 5e-7);
    }

    [Fact]
    public void Body_water_is_by_the_formula_of_the_age()
    {
        // Morgenstern 2006 (abstract, read; by hand): boy of 120 cm and 22 kg, (2640)^0.68 = 212.17, 0.10 × 212.17 − 0.37 × 22 = 13.08 L; girl, (2640)^0.64 = 154.82, 0.14 × 154.82 − 0.35 × 22 = 13.97 L.
        // An infant of 60 cm and 5 kg, a boy: (300)^0.68 = 48.36, 4.836 − 1.85 = 2.99 L, 60 % of the weight, where Watson says 10.5 L, twice the whole child. 18 years are an adult's.
        Patient Of(Sex sex, double years, double height, double weight) => Patient.Example with { Sex = sex, AgeYears = years, Height = Length.FromCentimeters(height), Weight = Mass.FromKilograms(weight) };
        Assert.Equal(13.08, Of(Sex.Male, 8, 120, 22).BodyWater.Liters, 5e-3);
        Assert.Equal(13.97, Of(Sex.Female, 8, 120, 22).BodyWater.Liters, 5e-3);
        Assert.Equal(2.99, Of(Sex.Male, 0.4, 60, 5).BodyWater.Liters, 5e-3);
        Assert.Equal(BodyWaterFormula.Morgenstern, Of(Sex.Male, 17.99, 170, 70).BodyWaterFormula);
        Assert.Equal(BodyWaterFormula.Watson, Of(Sex.Male, 18, 170, 70).BodyWaterFormula);
        Assert.Equal(38.5294, Patient.Example.BodyWater.Liters, 5e-5);
    }
}
