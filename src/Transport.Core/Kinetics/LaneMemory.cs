using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Transport;

/// <summary>Numbers over a lane, one after the other. Of several patients they begin on a cache line, so that no vector lies across two.</summary>
internal readonly struct LaneMemory<T>
    where T : struct, ILane<T>
{
    private const int CacheLine = 64;

    private readonly double[] numbers;
    private readonly int first;

    /// <summary>Room for so many, all zero.</summary>
    public LaneMemory(int count)
    {
        var length = count * LaneOf.Width<T>();
        Length = count;
        if (LaneOf.Width<T>() == 1)
        {
            numbers = new double[length];
            return;
        }

        // Pinned: a line that is found now stays one.
        numbers = GC.AllocateArray<double>(length + CacheLine / sizeof(double), pinned: true);
        var address = Marshal.UnsafeAddrOfPinnedArrayElement(numbers, 0);
        first = (int)((CacheLine - address % CacheLine) % CacheLine) / sizeof(double);
    }

    public int Length { get; }

    public Span<T> Span => MemoryMarshal.CreateSpan(ref Start, Length);

    /// <summary>The first of them.</summary>
    public ref T Start
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => ref Unsafe.As<double, T>(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(numbers), first));
    }

    public ref T this[int index] => ref Span[index];
}
