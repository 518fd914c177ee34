using System.Runtime.CompilerServices;

namespace Transport;

/// <summary>The ways of all solutes through one pore class, in rows.</summary>
internal readonly struct PorePassages<T>
    where T : struct, ILane<T>
{
    private readonly SoluteRow<T> passed;
    private readonly SoluteRow<T> ps;
    private readonly SoluteRow<T> halfPeclet;

    public PorePassages(int solutes)
    {
        passed = new(solutes);
        ps = new(solutes);
        halfPeclet = new(solutes);
    }

    public PorePassage<T> this[int solute]
    {
        get => new(passed[solute], ps[solute], halfPeclet[solute]);
        set => (passed[solute], ps[solute], halfPeclet[solute]) = (value.Passed, value.PS, value.HalfPeclet);
    }

    /// <summary>The passages of one step of the loop over the solutes.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public PorePassage<TStep> At<TStep>(int step)
        where TStep : struct, ILane<TStep> => new(passed.At<TStep>(step), ps.At<TStep>(step), halfPeclet.At<TStep>(step));

    /// <summary>Writes one patient's passages into his lane.</summary>
    public void WriteLane(int lane, in PorePassages<Real> one)
    {
        LaneOf.Write(passed.Span, lane, one.passed.Span);
        LaneOf.Write(ps.Span, lane, one.ps.Span);
        LaneOf.Write(halfPeclet.Span, lane, one.halfPeclet.Span);
    }
}
