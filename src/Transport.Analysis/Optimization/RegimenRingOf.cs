namespace Transport.Analysis;

/// <summary>A regimen's exchanges by their places in one of the catalogs.</summary>
internal sealed record RegimenRingOf(int Catalog, int[] Places);
