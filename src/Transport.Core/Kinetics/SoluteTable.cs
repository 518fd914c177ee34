using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Transport;

/// <summary>The ways of all solutes, laid out so that one loop serves one patient and several, and finds what a step needs in one place.</summary>
/// <remarks>
/// Several patients lie side by side in a lane and their solutes one after the other. Of one patient it is the solutes that lie side by side, four to a
/// vector; the last vector may then reach beyond the panel, where the table holds zeros.
/// </remarks>
internal readonly struct SoluteTable<T>(int solutes)
    where T : struct, ILane<T>
{
    private readonly LaneMemory<T> numbers = new(StepCount(solutes) * SolutesPerStep * SoluteWays<T>.Size);

    /// <summary>Whether the loop takes four solutes of one patient at a time.</summary>
    public static bool FourAtOnce => typeof(T) == typeof(Real) && Vector256.IsHardwareAccelerated;

    /// <summary>All its numbers.</summary>
    public Span<T> Span => numbers.Span;

    private static int SolutesPerStep => FourAtOnce ? Lanes4.Width : 1;

    public SoluteWays<T> this[int solute]
    {
        get
        {
            ref var plasma = ref Plasma(solute);
            return new(plasma, Passage(ref plasma, 1), Passage(ref plasma, 4));

            static PorePassage<T> Passage(ref T plasma, int from) => new(Field(ref plasma, from), Field(ref plasma, from + 1), Field(ref plasma, from + 2));
        }

        set
        {
            ref var plasma = ref Plasma(solute);
            var fields = MemoryMarshal.Cast<SoluteWays<T>, T>(MemoryMarshal.CreateReadOnlySpan(ref value, 1));
            for (var i = 0; i < fields.Length; i++)
            {
                Field(ref plasma, i) = fields[i];
            }
        }
    }

    /// <summary>Steps of the loop over so many solutes.</summary>
    public static int StepCount(int solutes) => (solutes + SolutesPerStep - 1) / SolutesPerStep;

    /// <summary>Concentration of a solute on the blood side, mmol/L.</summary>
    public ref T Plasma(int solute) => ref numbers[solute / SolutesPerStep * SolutesPerStep * SoluteWays<T>.Size + solute % SolutesPerStep];

    /// <summary>What the first step of the loop takes, the others' following: <typeparamref name="TStep"/> is four of <typeparamref name="T"/>, or the same.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ref SoluteWays<TStep> First<TStep>()
        where TStep : struct, ILane<TStep> => ref Unsafe.As<T, SoluteWays<TStep>>(ref numbers.Start);

    /// <summary>The same of a part of the state, which has three slots to spare behind its solutes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static ref TStep First<TStep>(ReadOnlySpan<T> numbers) => ref Unsafe.As<T, TStep>(ref MemoryMarshal.GetReference(numbers));

    /// <summary>One number for all solutes of a step.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static TStep Spread<TStep>(T number)
        where TStep : struct, ILane<TStep> =>
        typeof(T) == typeof(TStep) ? Unsafe.As<T, TStep>(ref number) : TStep.Of(T.Largest(number));

    /// <summary>Writes one patient's numbers into his lane.</summary>
    public void WriteLane(int lane, in SoluteTable<Real> one)
    {
        for (var solute = 0; solute < solutes; solute++)
        {
            ref var into = ref Plasma(solute);
            ref var from = ref one.Plasma(solute);
            for (var i = 0; i < SoluteWays<T>.Size; i++)
            {
                LaneOf.Set(ref Field(ref into, i), lane, SoluteTable<Real>.Field(ref from, i).Value);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static ref T Field(ref T plasma, int index) => ref Unsafe.Add(ref plasma, index * SolutesPerStep);
}
