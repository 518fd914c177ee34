namespace Transport;

/// <summary>Body surface and body water from height, weight, age and sex.</summary>
public static class BodySize
{
    /// <summary>Body surface, 0.007184 W^0.425 H^0.725 (kg, cm; m²).</summary>
    /// <remarks>Du Bois and Du Bois 1916; coefficients read in several secondary sources that agree.</remarks>
    public static Area SurfaceByDuBois(Length height, Mass weight) =>
        Area.FromSquareMeters(0.007184 * Math.Pow(weight.Kilograms, 0.425) * Math.Pow(height.Centimeters, 0.725));

    /// <summary>Body water of an adult.</summary>
    /// <remarks>
    /// Watson, Watson and Batt, Am J Clin Nutr 1980;33:27-39, read from the original abstract: men 2.447 − 0.09516 age + 0.1074 cm +
    /// 0.3362 kg (SD 3.76 L, n 458); women −2.097 + 0.1069 cm + 0.2466 kg (SD 3.60 L, n 265). The often copied 0.09156 has two
    /// digits swapped.
    /// </remarks>
    public static Volume WaterByWatson(Sex sex, double ageYears, Length height, Mass weight) => Volume.FromLiters(sex == Sex.Male
        ? 2.447 - 0.09516 * ageYears + 0.1074 * height.Centimeters + 0.3362 * weight.Kilograms
        : -2.097 + 0.1069 * height.Centimeters + 0.2466 * weight.Kilograms);
}
