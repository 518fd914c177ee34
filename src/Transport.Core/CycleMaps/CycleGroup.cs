using System.Collections.Immutable;

namespace Transport;

/// <summary>Exchanges that differ only in how long they stay: one dwell serves them all, and each has its own drain.</summary>
internal sealed class CycleGroup
{
    private CycleGroup(CycleKind head, ImmutableArray<int> members, ImmutableArray<double> dwells)
    {
        Head = head;
        Members = members;
        Dwells = dwells;
    }

    /// <summary>What they have in common; its times have no meaning.</summary>
    public CycleKind Head { get; }

    /// <summary>Their places in the list of kinds, shortest dwell first.</summary>
    public ImmutableArray<int> Members { get; }

    /// <summary>Their dwells, min.</summary>
    public ImmutableArray<double> Dwells { get; }

    /// <summary>The groups of a list of kinds.</summary>
    public static ImmutableArray<CycleGroup> Of(IReadOnlyList<CycleKind> kinds) =>
    [
        .. Enumerable.Range(0, kinds.Count)
            .GroupBy(kind => kinds[kind] with { Dwell = 0, Drain = 0 })
            .Select(group =>
            {
                ImmutableArray<int> members = [.. group.OrderBy(kind => kinds[kind].Dwell)];
                return new CycleGroup(group.Key, members, [.. members.Select(kind => kinds[kind].Dwell)]);
            }),
    ];
}
