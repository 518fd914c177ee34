namespace Transport;

/// <summary>Whom a membrane belongs to: size, plasma, residual kidney function. Never a name.</summary>
public sealed record Patient
{
    /// <summary>A patient.</summary>
    /// <exception cref="ArgumentNullException">Code, plasma or residual function is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Age, height or weight is not positive.</exception>
    public Patient(string code, Sex sex, double ageYears, Length height, Mass weight, PlasmaComposition plasma, ResidualFunction residualFunction)
    {
        ArgumentNullException.ThrowIfNull(code);
        ArgumentNullException.ThrowIfNull(plasma);
        ArgumentNullException.ThrowIfNull(residualFunction);
        Code = code;
        Sex = sex;
        AgeYears = ageYears;
        Height = height;
        Weight = weight;
        Plasma = plasma;
        ResidualFunction = residualFunction;
    }

    /// <summary>A code of the clinic's own; not a name.</summary>
    public string Code { get; init; }

    /// <summary>Sex, for the formula of body water.</summary>
    public Sex Sex { get; init; }

    /// <summary>Age, years.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero, negative or not finite.</exception>
    public double AgeYears
    {
        get;
        init => field = Require.Positive(value, "years", nameof(AgeYears));
    }

    /// <summary>Height.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Length Height
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Height));
    }

    /// <summary>Weight without dialysate in the belly; dry or ideal weight where oedema or obesity distort body water.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Mass Weight
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Weight));
    }

    /// <summary>Plasma concentrations.</summary>
    public PlasmaComposition Plasma { get; init; }

    /// <summary>Residual kidney function.</summary>
    public ResidualFunction ResidualFunction { get; init; }

    /// <summary>Body surface by Du Bois and Du Bois.</summary>
    public Area BodySurface => BodySize.SurfaceByDuBois(Height, Weight);

    /// <summary>By which formula <see cref="BodyWater"/> is taken: Morgenstern's of children on peritoneal dialysis below the age of an adult (<see cref="MembraneThresholds.AdultAge"/> as it ships), Watson's from it on.</summary>
    public BodyWaterFormula BodyWaterFormula => AgeYears < MembraneThresholds.Default.AdultAge.Value ? BodyWaterFormula.Morgenstern : BodyWaterFormula.Watson;

    /// <summary>Body water by the formula of the patient's age.</summary>
    public Volume BodyWater => BodySize.Water(BodyWaterFormula, this);

    /// <summary>Body surface over 1.73 m²: the factor by which population conductances and areas are scaled.</summary>
    public double SurfaceFactor => BodySurface.SquareMeters / 1.73;

    /// <summary>An invented adult for teaching and tests: 60 years, man, 170 cm, 70 kg, typical plasma, no urine.</summary>
    public static Patient Example { get; } = new(
        "example", Sex.Male, 60, Length.FromCentimeters(170), Mass.FromKilograms(70), PlasmaComposition.Typical, ResidualFunction.None);
}
