namespace Transport.Tests.Dwells;

/// <summary>A thousand people of the prior, each with a dwell of icodextrin of 16 h and one of 2.27 % glucose of 4 h.</summary>
internal static class IcodextrinPopulation
{
    private static readonly MembraneEnsemble People = PopulationPrior.IncidentAdults().ToEnsemble(Area.FromSquareMeters(1.73), 1000, 1);

    public static IReadOnlyList<DwellCourse> Courses { get; } =
        [.. Enumerable.Range(0, People.Count).Select(i => IcodextrinDwells.Run(People[i]))];

    public static IReadOnlyList<DwellCourse> Glucose { get; } =
        [.. Enumerable.Range(0, People.Count).Select(i => IcodextrinDwells.Run(People[i], hours: 4, solution: DialysisSolution.Glucose227))];
}
