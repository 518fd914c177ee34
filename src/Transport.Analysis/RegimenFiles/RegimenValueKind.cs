namespace Transport.Analysis;

/// <summary>What the value of an item in a regimen file is.</summary>
internal enum RegimenValueKind
{
    Word,
    Count,
    Clock,
    Duration,
    Volume,
    Flow,
    Share,
    Strength,
    Ion,
}
