namespace Transport;

/// <summary>What the cavity did on days without treatment.</summary>
/// <param name="Drained">Drained before the next night; near zero.</param>
/// <param name="PoreVolumes">What passed the pores into the residual fluid.</param>
/// <param name="LymphaticRemoval">What the lymphatics took up of it.</param>
public readonly record struct RestFluid(Volume Drained, PoreVolumes PoreVolumes, Volume LymphaticRemoval);
