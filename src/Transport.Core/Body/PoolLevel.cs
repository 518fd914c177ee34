namespace Transport;

/// <summary>How one pool of a rhythm was filled and emptied.</summary>
internal readonly record struct PoolLevel(
    SolutePool Pool, Volume Volume, double GenerationPerMinute, double RenalPerMinute, double OtherPerMinute, double Exposure, double Change);
