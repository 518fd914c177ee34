namespace Transport.Tests.Dwells;

/// <summary>The textbook patient's dwells, and what can be varied in them.</summary>
internal static class TextbookDwells
{
    public const double Weak = 75.5, Medium = 126.0, Strong = 214.0;

    /// <summary>The residual volume is fresh fluid, as in the older simulations.</summary>
    public static DwellCourse OnFreshResidual(
        ThreePoreMembrane membrane, double glucose, double fill = 2000, double minutes = 480, double plasmaGlucose = 6)
    {
        var solution = DialysisSolution.OfGlucose(glucose);
        return Run(membrane, solution, fill, minutes, plasmaGlucose, new()
        {
            Volume = Volume.FromMilliliters(300),
            Urea = default,
            Creatinine = default,
            Glucose = solution.Glucose,
            Sodium = solution.Sodium,
        });
    }

    /// <summary>The residual volume is used fluid.</summary>
    public static DwellCourse OnUsedResidual(
        ThreePoreMembrane membrane, double glucose, double fill = 2000, double minutes = 480, double plasmaGlucose = 6, double residual = 300) =>
        Run(membrane, DialysisSolution.OfGlucose(glucose), fill, minutes, plasmaGlucose,
            ResidualFluid.Used(Volume.FromMilliliters(residual), PlasmaComposition.Typical));

    public static double Ultrafiltration(this DwellCourse course, double minutes) =>
        course.NetUltrafiltrationAt(TimeSpan.FromMinutes(minutes)).Milliliters;

    public static double Milliliters(this DwellCourse course, double minutes) => course.VolumeAt(TimeSpan.FromMinutes(minutes)).Milliliters;

    public static double Dialysate(this DwellCourse course, Solute solute, double minutes) =>
        course.DialysateAt(solute, TimeSpan.FromMinutes(minutes)).MillimolesPerLiter;

    public static double OverPlasma(this DwellCourse course, Solute solute, double minutes) =>
        course.DialysateToPlasmaAt(solute, TimeSpan.FromMinutes(minutes));

    public static ThreePoreMembrane With(this ThreePoreMembrane membrane, double area = 1, double conductance = 1, double sodium = 1) => membrane with
    {
        DiffusionArea = membrane.DiffusionArea * area,
        UltrafiltrationCoefficient = membrane.UltrafiltrationCoefficient * conductance,
        SodiumPermeability = membrane.SodiumPermeability * sodium,
    };

    public static ThreePoreMembrane Lymph(this ThreePoreMembrane membrane, double millilitersPerMinute) => membrane with
    {
        LymphaticRemoval = FlowRate.FromMillilitersPerMinute(millilitersPerMinute),
    };

    private static DwellCourse Run(
        ThreePoreMembrane membrane, DialysisSolution solution, double fill, double minutes, double plasmaGlucose, ResidualFluid residual)
    {
        var patient = Patient.Example with
        {
            Plasma = PlasmaComposition.Typical with { Glucose = Concentration.FromMillimolesPerLiter(plasmaGlucose) },
        };
        return DwellSimulation.Run(
            patient, membrane, new(solution, Volume.FromMilliliters(fill), TimeSpan.FromMinutes(minutes), residual), new() { Panel = SolutePanel.Full });
    }
}
