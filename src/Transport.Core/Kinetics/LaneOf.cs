using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Transport;

/// <summary>One patient's place among several. Whatever a lane is made of, it is doubles side by side.</summary>
internal static class LaneOf
{
    /// <summary>Patients in a lane.</summary>
    public static int Width<T>()
        where T : struct, ILane<T> => Unsafe.SizeOf<T>() / sizeof(double);

    /// <summary>Writes one patient's numbers into the numbers of several.</summary>
    public static void Write<T>(Span<T> several, int lane, ReadOnlySpan<Real> one)
        where T : struct, ILane<T>
    {
        var doubles = MemoryMarshal.Cast<T, double>(several);
        for (var i = 0; i < several.Length; i++)
        {
            doubles[i * Width<T>() + lane] = one[i].Value;
        }
    }

    /// <summary>The number of one patient.</summary>
    public static double Read<T>(in T several, int lane)
        where T : struct, ILane<T> => Unsafe.Add(ref Unsafe.As<T, double>(ref Unsafe.AsRef(in several)), lane);

    /// <summary>Writes the number of one patient.</summary>
    public static void Set<T>(ref T several, int lane, double value)
        where T : struct, ILane<T> => Unsafe.Add(ref Unsafe.As<T, double>(ref several), lane) = value;
}
