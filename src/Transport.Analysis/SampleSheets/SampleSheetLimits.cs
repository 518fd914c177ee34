namespace Transport.Analysis;

/// <summary>Every threshold of the sheet reader, with its basis.</summary>
/// <remarks>
/// Marks: read = seen in a paper's abstract or excerpt; memory = remembered from the literature; computed; choice = ours.
/// Ranges say what is possible, not what is normal: they are wide on purpose, and mean that a number was mistyped.
/// </remarks>
public static class SampleSheetLimits
{
    // A sheet must not call comparable what the indices then call not: where both judge, the indices' table is the one that counts.
    private static readonly MembraneThresholds Indices = MembraneThresholds.Default;

    /// <summary>Largest file, bytes. A sheet has a few kB (choice).</summary>
    public const int FileBytes = 5_000_000;

    /// <summary>Most rows. A sheet has fewer than 100 (choice).</summary>
    public const int Rows = 1_000;

    /// <summary>Age.</summary>
    public static PlausibleRange AgeYears { get; } = new(0.1, 110, "years", "choice: lifetimes");

    /// <summary>Height.</summary>
    public static PlausibleRange HeightCentimeters { get; } = new(40, 230, "cm", "choice: infants to the tallest adults");

    /// <summary>Weight.</summary>
    public static PlausibleRange WeightKilograms { get; } = new(2, 300, "kg", "choice: infants to the heaviest adults");

    /// <summary>Residual clearance of one kidney pair on dialysis.</summary>
    public static PlausibleRange RenalClearance { get; } = new(0, 40, "mL/min", "choice: above, nobody is on dialysis");

    /// <summary>Urine in 24 hours.</summary>
    public static PlausibleRange UrinePerDay { get; } = new(0, 8000, "mL/day", "choice");

    /// <summary>Fill volume.</summary>
    public static PlausibleRange FillMilliliters { get; } = new(100, 4000, "mL", "choice: infants to the largest adult fills");

    /// <summary>Overfill of one bag.</summary>
    public static PlausibleRange OverfillMilliliters { get; } = new(0, 400, "mL", "choice: usual 2-5 % of 2 L, at most 20 %");

    /// <summary>Drained volume.</summary>
    public static PlausibleRange DrainedMilliliters { get; } = new(0, 6500, "mL", "choice: largest fill and ultrafiltration");

    /// <summary>Residual volume.</summary>
    public static PlausibleRange ResidualMilliliters { get; } = new(0, 2000, "mL", "choice: usual 200-250 mL (memory)");

    /// <summary>Dwell of a test.</summary>
    public static PlausibleRange DwellMinutes { get; } = new(15, 1080, "min", "choice: shortest tests to the longest day dwell");

    /// <summary>Glucose of a fresh glucose solution.</summary>
    public static PlausibleRange SolutionGlucose { get; } = new(30, 300, "mmol/L", "choice: 0.5 to 5.4 % anhydrous");

    /// <summary>Sodium of a fresh solution, ultra-low-sodium trial fluids (98 mmol/L, read) included.</summary>
    public static PlausibleRange SolutionSodium { get; } = new(80, 150, "mmol/L", "choice around read compositions");

    /// <summary>Creatinine read per glucose in an alkaline-picrate assay. One published factor is 0.00053 (read).</summary>
    public static PlausibleRange GlucoseFactor { get; } = new(0, 0.005, "mg/dL per mg/dL", "choice: ten times the published one");

    /// <summary>Days of a collection, h.</summary>
    public static PlausibleRange CollectionHours { get; } = new(12, 48, "h", "choice: half a day to two");

    /// <summary>Empty bag, g.</summary>
    public static PlausibleRange TareGrams { get; } = new(0, 500, "g", "choice");

    /// <summary>Duration of an instillation, min.</summary>
    public static PlausibleRange InstillationMinutes { get; } = new(1, 90, "min", "choice");

    /// <summary>What a laboratory value can be, mmol/L; proteins and marker in g/L.</summary>
    public static PlausibleRange Measured(SampledFluid fluid, Analyte analyte) => (fluid, analyte) switch
    {
        (SampledFluid.Plasma, Analyte.Creatinine) => PlasmaCreatinine,
        (SampledFluid.Urine, Analyte.Creatinine) => UrineCreatinine,
        (_, Analyte.Creatinine) => DialysateCreatinine,
        (SampledFluid.Plasma, Analyte.Glucose) => PlasmaGlucose,
        (_, Analyte.Glucose) => DialysateGlucose,
        (SampledFluid.Plasma, Analyte.Sodium) => PlasmaSodium,
        (SampledFluid.Urine, Analyte.Sodium) => UrineSodium,
        (_, Analyte.Sodium) => DialysateSodium,
        (SampledFluid.Plasma, Analyte.Urea or Analyte.UreaNitrogen) => PlasmaUrea,
        (SampledFluid.Urine, Analyte.Urea or Analyte.UreaNitrogen) => UrineUrea,
        (_, Analyte.Urea or Analyte.UreaNitrogen) => DialysateUrea,
        (_, Analyte.Potassium) => Potassium,
        (_, Analyte.Marker) => Marker,
        (SampledFluid.Plasma, _) => PlasmaProtein,
        _ => OtherProtein,
    };

    private static readonly PlausibleRange UrineCreatinine = new(0, 50, "mmol/L", "choice");
    private static readonly PlausibleRange UrineSodium = new(0, 300, "mmol/L", "choice");
    private static readonly PlausibleRange UrineUrea = new(0, 800, "mmol/L", "choice");
    private static readonly PlausibleRange Potassium = new(0, 200, "mmol/L", "choice: dialysate to urine");
    private static readonly PlausibleRange Marker = new(0, 20, "g/L", "choice: usual 1 g/L of dextran");
    private static readonly PlausibleRange PlasmaProtein = new(0.0005, 150, "g/L", "choice: beta2-microglobulin to total protein");
    private static readonly PlausibleRange OtherProtein = new(0, 50, "g/L", "choice");
    private static readonly PlausibleRange PlasmaCreatinine = new(0.1, 3.0, "mmol/L", "choice: 100-3000 µmol/L on dialysis, children included");
    private static readonly PlausibleRange DialysateCreatinine = new(0, 3.0, "mmol/L", "choice: not above plasma's highest");
    private static readonly PlausibleRange PlasmaUrea = new(1.5, 80, "mmol/L", "choice");
    private static readonly PlausibleRange DialysateUrea = new(0, 80, "mmol/L", "choice: not above plasma's highest");
    private static readonly PlausibleRange PlasmaGlucose = new(1.0, 60, "mmol/L", "choice: worst hypo- to hyperglycaemia of a walking patient");
    private static readonly PlausibleRange DialysateGlucose = new(0.5, 300, "mmol/L", "choice: not above the strongest solution");
    private static readonly PlausibleRange PlasmaSodium = new(105, 170, "mmol/L", "choice: survivable");
    private static readonly PlausibleRange DialysateSodium = new(75, 165, "mmol/L", "choice: ultra-low-sodium fluid to plasma's highest");

    /// <summary>Spread of a laboratory's analyte. 3 % (0.7 % for sodium) gives the usual doubt of D/P, 0.03 at 0.70 (computed); floors are a choice.</summary>
    public static AssaySpread Spread(Analyte analyte) => analyte switch
    {
        Analyte.Creatinine => CreatinineSpread,
        Analyte.Glucose => GlucoseSpread,
        Analyte.Sodium => SodiumSpread,
        _ => UreaSpread,
    };

    private static readonly AssaySpread CreatinineSpread = new(0.03, 0.009);
    private static readonly AssaySpread UreaSpread = new(0.03, 0.2);
    private static readonly AssaySpread GlucoseSpread = new(0.03, 0.2);
    private static readonly AssaySpread SodiumSpread = new(0.007, 0.5);

    /// <summary>Assay deviations beyond which a curve that turns back is an error, not chance (choice).</summary>
    public const double TurnDeviations = 3;

    /// <summary>D/P above which a sample is not possible: published maxima are 1.03 and 1.14 (read); 1.10 is a choice between.</summary>
    public static double ImpossibleRatio => Indices.DialysateToPlasmaImpossible.Value;

    /// <summary>D/P above which a reader is warned: equilibrium.</summary>
    public static double FullRatio => Indices.DialysateToPlasmaHigh.Value;

    /// <summary>D/P creatinine at 0 min above which glucose was probably read as creatinine: carry-over gives 0.05-0.12 (choice).</summary>
    public const double InitialCreatinineRatio = 0.12;

    /// <summary>The same where glucose does not disturb it: much carry-over, or a late sample (choice).</summary>
    public const double InitialCreatinineRatioWithoutGlucose = 0.20;

    /// <summary>How far sodium at 0 min may lie from the bag's, mmol/L (choice): mixing moves it by less than 2, labels are off by up to 7 (read).</summary>
    public const double InitialSodiumGap = 7;

    /// <summary>Lowest usual share of the bag's glucose in the 0-min sample; below: large residual volume or a late sample (choice).</summary>
    public const double InitialGlucoseShareLow = 0.75;

    /// <summary>Highest share of the bag's glucose in the 0-min sample; above: an undiluted bag sample.</summary>
    public const double InitialGlucoseShareHigh = 1.00;

    /// <summary>Usual share of the bag's glucose in the 0-min sample: 1930 of 2270 mg/dL is 0.85 (read).</summary>
    public const double InitialGlucoseShareUsual = 0.86;

    /// <summary>How near to the usual share another strength has to bring the 0-min sample to be named (choice).</summary>
    public const double InitialGlucoseShareTolerance = 0.09;

    /// <summary>Glucose strengths in use, mmol/L: 1.36, 2.27 and 3.86 % anhydrous, and the "1.5 %" and "4.25 %" of anhydrous labels (computed).</summary>
    public static IReadOnlyList<double> Strengths { get; } = [75.5, 83.3, 126.0, 214.3, 235.9];

    /// <summary>Distance from a strength in use, as a share, beyond which the bag is called unusual (choice).</summary>
    public const double StrengthTolerance = 0.03;

    /// <summary>Two strengths closer than this, as a share, are one bag under two labelling conventions: they differ by 10 % (computed).</summary>
    public const double ConventionGap = 0.15;

    /// <summary>Labels, g/L, that mean the monohydrate in one convention and anhydrous glucose in the other (read).</summary>
    public static IReadOnlyList<double> TwofoldLabels { get; } = [15.0, 25.0, 42.5];

    /// <summary>Glucose from which a dip of sodium at 60 min is expected, mmol/L: 3.86 % and stronger (choice).</summary>
    public const double SievingStrength = 190;

    /// <summary>Sodium of usual fresh solutions, mmol/L: 132 and 134, low-sodium 125 (read).</summary>
    public static PlausibleRange UsualSolutionSodium { get; } = new(125, 134, "mmol/L", "read compositions");

    /// <summary>Adult fill that class tables hold for, mL: 2 L (read) within 0.1 L (choice).</summary>
    public static PlausibleRange ComparableFill { get; } = new(
        Indices.AdultFillLow.Value, Indices.AdultFillHigh.Value, Indices.AdultFillLow.Unit, "adult class tables are of 2 L fills");

    /// <summary>Child's fill that class tables hold for, mL per m²: 1100 (memory) within 10 % (choice).</summary>
    public static PlausibleRange ComparableChildFill { get; } = new(
        Indices.ChildFillLow.Value, Indices.ChildFillHigh.Value, Indices.ChildFillLow.Unit, "paediatric class tables are of 1100 mL/m²");

    /// <summary>Dwell that class tables hold for, min: 4 h (read) within 10 min (choice).</summary>
    public static PlausibleRange ComparableDwell { get; } = new(
        240 - Indices.FourHourTolerance.Value, 240 + Indices.FourHourTolerance.Value, Indices.FourHourTolerance.Unit, "class tables are of 4 h");

    /// <summary>Age from which the adult body-water formula and classes hold, years (choice).</summary>
    public static double AdultAgeYears => Indices.AdultAge.Value;

    /// <summary>Net ultrafiltration of one dwell, mL; outside: bag tare, overfill or an incomplete drain (choice).</summary>
    public static PlausibleRange NetUltrafiltration { get; } = new(-1000, 1700, "mL", "choice");

    /// <summary>By how much a dialysate sample may be later than the dwell, min: the drained bag is sampled after the drain (choice).</summary>
    public const double LateSampleMinutes = 15;

    /// <summary>How far from the end of the dwell its last sample may lie, min (choice).</summary>
    public const double FinalSampleMinutes = 15;

    /// <summary>How late a sample may be and still count as the 0-min sample, min (choice).</summary>
    public static double InitialSampleMinutes => Indices.EarlyTolerance.Value;

    /// <summary>How far from 60 min a sodium sample may lie and still show the dip, min (choice).</summary>
    public const double DipSampleMinutes = 15;

    /// <summary>Two dialysate samples closer than this, min, are probably one sample with two times (choice).</summary>
    public const double DistinctSampleMinutes = 5;

    /// <summary>How far before or after the dwell blood may be drawn, min (choice).</summary>
    public const double BloodMinutes = 60;

    /// <summary>Minutes by which the written dwell and the clock times may differ (choice).</summary>
    public const double ClockDisagreementMinutes = 5;

    /// <summary>Plasma urea, mmol/L, below which "urea" may be urea nitrogen: usual on dialysis 10-35 (memory).</summary>
    public const double LowPlasmaUrea = 6;

    /// <summary>Plasma urea, mmol/L, above which "urea nitrogen" may be urea (choice).</summary>
    public const double HighPlasmaUrea = 50;
}
