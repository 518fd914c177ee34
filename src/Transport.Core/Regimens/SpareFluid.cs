namespace Transport;

/// <summary>What happens to fluid that does not make a whole cycle.</summary>
public enum SpareFluid
{
    /// <summary>It stays in the bag.</summary>
    Leave,

    /// <summary>It is shared out: every cycle gets a little more.</summary>
    Share,
}
