namespace Transport;

/// <summary>The dwells of a group up to the start of each drain, in memory of their own.</summary>
internal abstract class CycleDwells(CycleGroup group)
{
    public CycleGroup Group { get; } = group;

    /// <summary>Of each member, whether its dwell was possible.</summary>
    public bool[] Holds { get; } = new bool[group.Members.Length];
}

/// <summary>The same over a lane: pass after pass, member after member.</summary>
internal sealed class CycleDwells<T>(CycleGroup group, int passes, int size) : CycleDwells(group)
    where T : struct, ILane<T>
{
    private readonly T[] states = new T[passes * group.Members.Length * size];
    private readonly T[] peaks = new T[passes * group.Members.Length];

    public Span<T> States(int pass) => states.AsSpan(pass * Group.Members.Length * size, Group.Members.Length * size);

    public Span<T> Peaks(int pass) => peaks.AsSpan(pass * Group.Members.Length, Group.Members.Length);
}
