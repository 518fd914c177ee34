namespace Transport;

/// <summary>Which pattern a finding belongs to.</summary>
public static class MembranePatterns
{
    /// <summary>Patterns that findings are compatible with, each once, in the order of the enumeration.</summary>
    public static IReadOnlyList<MembranePattern> Of(IEnumerable<Finding> findings)
    {
        ArgumentNullException.ThrowIfNull(findings);
        return [.. findings.Select(finding => Of(finding.Code)).OfType<MembranePattern>().Distinct().Order()];
    }

    /// <summary>The pattern in words.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a pattern.</exception>
    public static string Name(this MembranePattern pattern) => pattern switch
    {
        MembranePattern.FastTransfer => "fast transfer",
        MembranePattern.LowUltrafiltrationWithFastTransfer => "low ultrafiltration with fast transfer",
        MembranePattern.LowOsmoticConductance => "low osmotic conductance to glucose",
        MembranePattern.FluidLossOrMechanical => "fluid loss or a mechanical cause",
        MembranePattern.SmallSurface => "small effective surface",
        MembranePattern.ProteinLoss => "high protein loss",
        _ => throw new ArgumentOutOfRangeException(nameof(pattern), pattern, "Not a pattern."),
    };

    private static MembranePattern? Of(string code) => code switch
    {
        // A coefficient or an absorbed share beyond its limit is no fast transfer while the class is average.
        "fast-transfer" => MembranePattern.FastTransfer,
        "low-ultrafiltration-fast-transfer" => MembranePattern.LowUltrafiltrationWithFastTransfer,
        "low-osmotic-conductance" or "corrected-dip-small-in-fast-transfer" or "free-water-share-low" => MembranePattern.LowOsmoticConductance,
        "low-ultrafiltration-dip-preserved" or "fluid-absorption-high" => MembranePattern.FluidLossOrMechanical,
        "low-ultrafiltration-slow-transfer" => MembranePattern.SmallSurface,
        "protein-loss-high" => MembranePattern.ProteinLoss,
        _ => null,
    };
}
