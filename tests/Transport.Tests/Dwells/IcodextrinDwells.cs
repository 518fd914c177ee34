namespace Transport.Tests.Dwells;

/// <summary>The dwell on which icodextrin is calibrated: mean incident adult, 2 L on 250 mL of used dialysate, typical plasma.</summary>
internal static class IcodextrinDwells
{
    public static ThreePoreMembrane Mean { get; } = ReferenceMembranes.MeanIncidentAdult();

    public static PlasmaComposition RegularUser { get; } =
        PlasmaComposition.Typical with { Others = PolymerDistribution.Icodextrin.InPlasmaOfRegularUser() };

    public static Dwell Dwell(double hours = 16, DialysisSolution? solution = null) => new(
        solution ?? DialysisSolution.Icodextrin,
        Volume.FromLiters(2),
        TimeSpan.FromHours(hours),
        ResidualFluid.Used(Volume.FromMilliliters(250), PlasmaComposition.Typical));

    public static DwellCourse Run(
        ThreePoreMembrane? membrane = null, PlasmaComposition? plasma = null, double hours = 16, double scissionPerHour = 0, DialysisSolution? solution = null) =>
        DwellSimulation.Run(
            Patient.Example with { Plasma = plasma ?? PlasmaComposition.Typical },
            membrane ?? Mean,
            Dwell(hours, solution),
            new() { PolymerScissionPerHour = scissionPerHour });

    public static double UltrafiltrationAt(this DwellCourse course, double hours) =>
        course.NetUltrafiltrationAt(TimeSpan.FromHours(hours)).Milliliters;

    public static double AbsorbedAt(this DwellCourse course, double hours) =>
        course.PolymerAbsorbedAt(TimeSpan.FromHours(hours)) / course.PolymerAt(TimeSpan.Zero);

    public static ThreePoreMembrane WithArea(double factor) => Mean with { DiffusionArea = Mean.DiffusionArea * factor };
}
