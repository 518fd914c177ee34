using System.Collections.Immutable;

namespace Transport;

/// <summary>Volume, concentrations and pore flows of many dwells at the same times, as a structure of arrays. It can be filled again and again.</summary>
public sealed class DwellSamples
{
    private readonly double[][] columns;
    private readonly List<DwellFailure> failures = [];
    private readonly Lock gate = new();

    /// <summary>Room for results.</summary>
    /// <param name="panel">The solutes that are followed.</param>
    /// <param name="times">When to sample, in order, from 0 on.</param>
    /// <param name="count">How many dwells.</param>
    /// <exception cref="ArgumentException">There is no time, or they are not in order.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A time is negative, or there is no dwell.</exception>
    public DwellSamples(SolutePanel panel, IEnumerable<TimeSpan> times, int count)
    {
        ArgumentNullException.ThrowIfNull(panel);
        Panel = panel;
        Times = [.. times];
        Count = (int)Require.InRange(count, 1, int.MaxValue, "");
        if (Times.IsEmpty || !Times.Order().SequenceEqual(Times))
        {
            throw new ArgumentException("Expected at least one time, in order.", nameof(times));
        }

        Minutes = [.. Times.Select(time => Require.NotNegative(time.TotalMinutes, "min", nameof(times)))];
        columns = [.. Enumerable.Range(0, Times.Length * SlotCount).Select(_ => new double[count])];
    }

    /// <summary>The solutes that are followed.</summary>
    public SolutePanel Panel { get; }

    /// <summary>When the dwells are sampled.</summary>
    public ImmutableArray<TimeSpan> Times { get; }

    /// <summary>How many dwells.</summary>
    public int Count { get; }

    /// <summary>Dwells that could not be simulated, in order; their numbers are zero, which no volume of a dwell is.</summary>
    public IReadOnlyList<DwellFailure> Failures => failures;

    /// <summary>Intraperitoneal volume of every dwell at a time, mL.</summary>
    /// <param name="sample">Which time.</param>
    public ReadOnlySpan<double> VolumesMilliliters(int sample) => Column(sample, 0);

    /// <summary>Dialysate concentration in every dwell at a time, mmol/L; of proteins, relative to plasma.</summary>
    /// <param name="solute">Which solute.</param>
    /// <param name="sample">Which time.</param>
    /// <exception cref="ArgumentException">The solute was not followed.</exception>
    public ReadOnlySpan<double> ConcentrationsMillimolesPerLiter(Solute solute, int sample)
    {
        ArgumentNullException.ThrowIfNull(solute);
        return Column(sample, 1 + Panel.IndexOf(solute));
    }

    /// <summary>Glucose polymer in the cavity of a dwell at a time, as mass of chains of any length, g; zero where none is followed.</summary>
    /// <param name="sample">Which time.</param>
    /// <param name="dwell">Which dwell.</param>
    public double PolymerGrams(int sample, int dwell)
    {
        var grams = 0.0;
        for (var i = Panel.PolymerStart; i < Panel.Count; i++)
        {
            grams += Column(sample, 1 + i)[dwell] * Column(sample, 0)[dwell] * 1e-6 * Panel.Solutes[i].MolarMassGramsPerMole;
        }

        return grams;
    }

    /// <summary>What has passed the ultrasmall pores in every dwell, mL.</summary>
    /// <param name="sample">Which time.</param>
    public ReadOnlySpan<double> UltrasmallPoreMilliliters(int sample) => Column(sample, 1 + Panel.Count);

    /// <summary>What has passed the small pores in every dwell, mL.</summary>
    /// <param name="sample">Which time.</param>
    public ReadOnlySpan<double> SmallPoreMilliliters(int sample) => Column(sample, 2 + Panel.Count);

    /// <summary>What has passed the large pores in every dwell, mL.</summary>
    /// <param name="sample">Which time.</param>
    public ReadOnlySpan<double> LargePoreMilliliters(int sample) => Column(sample, 3 + Panel.Count);

    internal double[] Minutes { get; }

    private int SlotCount => 4 + Panel.Count;

    internal void Clear() => failures.Clear();

    /// <summary>Writes the states of dwells that stand side by side: amounts become concentrations.</summary>
    /// <param name="sample">Which time.</param>
    /// <param name="state">Their state at it.</param>
    /// <param name="first">Index to which theirs are relative.</param>
    /// <param name="dwells">Which, one for each lane or fewer.</param>
    internal void Write<T>(int sample, ReadOnlySpan<T> state, int first, ReadOnlySpan<int> dwells)
        where T : struct, ILane<T>
    {
        var volume = state[0];
        var perVolume = T.Of(1) / volume;
        for (var slot = 0; slot < state.Length; slot++)
        {
            var numbers = slot > 0 && slot <= Panel.Count ? state[slot] * perVolume : state[slot];
            var column = columns[sample * SlotCount + slot].AsSpan(first);
            for (var lane = 0; lane < dwells.Length; lane++)
            {
                column[dwells[lane]] = LaneOf.Read(numbers, lane);
            }
        }
    }

    internal void Fail(int dwell, Finding finding)
    {
        foreach (var column in columns)
        {
            column[dwell] = 0;
        }

        lock (gate)
        {
            failures.Add(new(dwell, finding));
        }
    }

    internal void Finish() => failures.Sort((left, right) => left.Index.CompareTo(right.Index));

    private ReadOnlySpan<double> Column(int sample, int slot)
    {
        Require.InRange(sample, 0, Times.Length - 1, "");
        return columns[sample * SlotCount + slot];
    }
}
