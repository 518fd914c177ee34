namespace Transport;

/// <summary>What the indices of one test are compatible with. Tentative words only; nothing that needs a second test or years is said.</summary>
internal static class EquilibrationFindings
{
    public static IReadOnlyList<Finding> Of(EquilibrationIndices indices) =>
        [
            .. PlasmaFindings.Of(indices.Test.Plasma, indices.Test.IsBesideIcodextrin, indices.Options.Thresholds),
            .. QualityFindings.Of(indices), .. TransferFindings.Of(indices), .. FluidFindings.Of(indices),
        ];
}
