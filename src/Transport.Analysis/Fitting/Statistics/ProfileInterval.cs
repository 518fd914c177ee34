namespace Transport.Analysis;

/// <summary>Where one coordinate may lie, with all the others free to follow it.</summary>
/// <param name="Optimum">The coordinate at the optimum.</param>
/// <param name="Low">Lower end; null where the deviance does not rise enough within reach: the data leave it open.</param>
/// <param name="High">Upper end; null where it is open.</param>
/// <param name="Points">Coordinate and deviance above the optimum's, for every point that was computed, in order.</param>
/// <param name="FoundBetter">Whether the others' freedom led to a lower deviance than the optimum's: the optimum was not the best one.</param>
/// <param name="Evaluations">Evaluations that it took.</param>
internal sealed record ProfileInterval(
    double Optimum, double? Low, double? High, IReadOnlyList<(double Coordinate, double Rise)> Points, bool FoundBetter, int Evaluations)
{
    public bool IsOpenBelow => Low is null;

    public bool IsOpenAbove => High is null;
}
