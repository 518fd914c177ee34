namespace Transport;

/// <summary>A bag that is hung for a regimen.</summary>
/// <param name="Solution">What is in it.</param>
/// <param name="Volume">How much of it.</param>
/// <param name="IsForDay">Whether it is for the day; otherwise it is for the night.</param>
public sealed record FluidBag(DialysisSolution Solution, Volume Volume, bool IsForDay = false)
{
    /// <summary>How much of it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Zero or negative.</exception>
    public Volume Volume
    {
        get;
        init => field = Require.MoreThanZero(value, nameof(Volume));
    }
    = Require.MoreThanZero(Volume, nameof(Volume));

    /// <summary>Bags in use, mL: 1.5, 2, 2.5, 3, 5 and 6 L (memory).</summary>
    public static IReadOnlyList<Volume> UsualVolumes { get; } = [.. new[] { 1.5, 2, 2.5, 3, 5, 6 }.Select(Volume.FromLiters)];
}
