namespace Transport;

/// <summary>Body surface and body water from height, weight, age and sex.</summary>
/// <remarks>
/// Coefficients and worked cases: reference-data/watson-1980-body-size. Formulas of adults leave their range for a small child, and may fall below zero; children on
/// peritoneal dialysis have one of their own (<see cref="WaterByMorgenstern"/>).
/// </remarks>
public static class BodySize
{
    /// <summary>Body surface, 0.007184 W^0.425 H^0.725 (kg, cm; m²).</summary>
    /// <remarks>Du Bois and Du Bois 1916; coefficients read in several secondary sources that agree.</remarks>
    public static Area SurfaceByDuBois(Length height, Mass weight) =>
        Area.FromSquareMeters(0.007184 * Math.Pow(weight.Kilograms, 0.425) * Math.Pow(height.Centimeters, 0.725));

    /// <summary>Body surface, √(H W / 3600) (cm, kg; m²).</summary>
    /// <remarks>Mosteller 1987; read in several secondary sources that agree.</remarks>
    public static Area SurfaceByMosteller(Length height, Mass weight) =>
        Area.FromSquareMeters(Math.Sqrt(height.Centimeters * weight.Kilograms / 3600.0));

    /// <summary>Body surface, made for children, 0.024265 W^0.5378 H^0.3964 (kg, cm; m²).</summary>
    /// <remarks>Haycock, Schwartz and Wisotsky 1978; coefficients read in several secondary sources that agree.</remarks>
    public static Area SurfaceByHaycock(Length height, Mass weight) =>
        Area.FromSquareMeters(0.024265 * Math.Pow(weight.Kilograms, 0.5378) * Math.Pow(height.Centimeters, 0.3964));

    /// <summary>Body surface, 0.0235 W^0.51456 H^0.42246 (kg, cm; m²).</summary>
    /// <remarks>Gehan and George 1970; coefficients read in several secondary sources that agree.</remarks>
    public static Area SurfaceByGehanGeorge(Length height, Mass weight) =>
        Area.FromSquareMeters(0.0235 * Math.Pow(weight.Kilograms, 0.51456) * Math.Pow(height.Centimeters, 0.42246));

    /// <summary>Body water of an adult.</summary>
    /// <remarks>
    /// Watson, Watson and Batt, Am J Clin Nutr 1980;33:27-39, read from the original abstract: men 2.447 − 0.09516 age + 0.1074 cm +
    /// 0.3362 kg (SD 3.76 L, n 458); women −2.097 + 0.1069 cm + 0.2466 kg (SD 3.60 L, n 265). The often copied 0.09156 has two
    /// digits swapped.
    /// </remarks>
    public static Volume WaterByWatson(Sex sex, double ageYears, Length height, Mass weight) => Volume.FromLiters(sex == Sex.Male
        ? 2.447 - 0.09516 * ageYears + 0.1074 * height.Centimeters + 0.3362 * weight.Kilograms
        : -2.097 + 0.1069 * height.Centimeters + 0.2466 * weight.Kilograms);

    /// <summary>Body water of an adult, without age.</summary>
    /// <remarks>
    /// Hume and Weyers 1971, coefficients read in several secondary sources that agree: men 0.194786 cm + 0.296785 kg − 14.012934;
    /// women 0.34454 cm + 0.183809 kg − 35.270121.
    /// </remarks>
    public static Volume WaterByHumeWeyers(Sex sex, Length height, Mass weight) => Volume.FromLiters(sex == Sex.Male
        ? 0.194786 * height.Centimeters + 0.296785 * weight.Kilograms - 14.012934
        : 0.34454 * height.Centimeters + 0.183809 * weight.Kilograms - 35.270121);

    /// <summary>Body water of a child on peritoneal dialysis.</summary>
    /// <remarks>
    /// Morgenstern et al., J Am Soc Nephrol 2006;17:285-293 (abstract, read; 64 patients of 1 month to 23 years on chronic peritoneal dialysis, isotope dilution): boys 0.10 (H W)^0.68 − 0.37 W, girls
    /// 0.14 (H W)^0.64 − 0.35 W. A secondary page prints 0.010 for boys, ten times too small.
    /// </remarks>
    public static Volume WaterByMorgenstern(Sex sex, Length height, Mass weight) => Volume.FromLiters(sex == Sex.Male
        ? 0.10 * Math.Pow(height.Centimeters * weight.Kilograms, 0.68) - 0.37 * weight.Kilograms
        : 0.14 * Math.Pow(height.Centimeters * weight.Kilograms, 0.64) - 0.35 * weight.Kilograms);

    /// <summary>Body water of a patient by a formula.</summary>
    /// <exception cref="ArgumentOutOfRangeException">There is no such formula.</exception>
    public static Volume Water(BodyWaterFormula formula, Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        return formula switch
        {
            BodyWaterFormula.Watson => WaterByWatson(patient.Sex, patient.AgeYears, patient.Height, patient.Weight),
            BodyWaterFormula.HumeWeyers => WaterByHumeWeyers(patient.Sex, patient.Height, patient.Weight),
            BodyWaterFormula.Morgenstern => WaterByMorgenstern(patient.Sex, patient.Height, patient.Weight),
            _ => throw new ArgumentOutOfRangeException(nameof(formula), formula, null),
        };
    }
}
