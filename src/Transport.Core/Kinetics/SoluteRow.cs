using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>A number of each solute, laid out so that one loop serves one patient and several.</summary>
/// <remarks>
/// Several patients lie side by side in a lane and their solutes one after the other. Of one patient it is the solutes that lie side by side, four to a
/// vector; the last vector may then reach beyond the panel, where the row holds zeros.
/// </remarks>
internal readonly struct SoluteRow<T>(int solutes)
    where T : struct, ILane<T>
{
    private readonly LaneMemory<T> numbers = new(StepCount(solutes) * SolutesPerStep);

    /// <summary>Whether the loop takes four solutes of one patient at a time.</summary>
    public static bool FourAtOnce => typeof(T) == typeof(Real) && Vector256.IsHardwareAccelerated;

    /// <summary>Steps of the loop over so many solutes.</summary>
    public static int StepCount(int solutes) => (solutes + SolutesPerStep - 1) / SolutesPerStep;

    private static int SolutesPerStep => FourAtOnce ? Lanes4.Width : 1;

    public Span<T> Span => numbers.Span;

    public ref T this[int solute] => ref numbers[solute];

    /// <summary>What one step of the loop takes: <typeparamref name="TStep"/> is four of <typeparamref name="T"/>, or the same.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref TStep At<TStep>(int step) => ref Unsafe.Add(ref Unsafe.As<T, TStep>(ref numbers.Start), step);

    /// <summary>The same of a part of the state, which has three slots to spare behind its solutes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ref TStep At<TStep>(ReadOnlySpan<T> numbers, int step) =>
        ref Unsafe.Add(ref Unsafe.As<T, TStep>(ref MemoryMarshal.GetReference(numbers)), step);

    /// <summary>One number for all solutes of a step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TStep Spread<TStep>(T number)
        where TStep : struct, ILane<TStep> =>
        typeof(T) == typeof(TStep) ? Unsafe.As<T, TStep>(ref number) : TStep.Of(T.Largest(number));
}
