namespace Transport.Analysis;

/// <summary>A regimen's exchanges by their places in one of the catalogs, and the branch of all but the last.</summary>
internal sealed record RegimenRingOf(int Catalog, int Branch, int[] Places);
