namespace Transport.Reporting;

/// <summary>The area between two curves, such as the 90 % band of an ensemble, in the units of the panel's axes.</summary>
public sealed record ShadedBand
{
    /// <summary>The area from lower[i] to upper[i] over x[i].</summary>
    /// <param name="name">What the reader sees in the key; bands of one name share one entry.</param>
    /// <param name="x">At least two finite values, ascending.</param>
    /// <param name="lower">As many values as <paramref name="x"/>.</param>
    /// <param name="upper">As many values as <paramref name="x"/>, none below its lower one.</param>
    /// <exception cref="ArgumentException">No name; fewer than two values, unequal numbers of values or a value that is not
    /// finite; x does not ascend; or an upper value lies below its lower one.</exception>
    public ShadedBand(string name, IReadOnlyList<double> x, IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        Name = ChartChecks.Text(name, "The name of a band");
        X = ChartChecks.Values(x, $"Band \"{name}\": x");
        Lower = ChartChecks.Values(lower, $"Band \"{name}\": lower");
        Upper = ChartChecks.Values(upper, $"Band \"{name}\": upper");
        ChartChecks.SameLength(X.Count, Lower.Count, $"Band \"{name}\": x", "lower");
        ChartChecks.SameLength(X.Count, Upper.Count, $"Band \"{name}\": x", "upper");
        if (X.Count < 2) throw new ArgumentException($"Band \"{name}\" has one value of x; an area needs two.");
        for (var i = 0; i < X.Count; i++)
        {
            if (i > 0 && X[i] <= X[i - 1])
                throw new ArgumentException(
                    FormattableString.Invariant($"Band \"{name}\": x[{i}] is {X[i]}, not above x[{i - 1}], {X[i - 1]}; x must ascend."));
            if (Upper[i] < Lower[i])
                throw new ArgumentException(
                    FormattableString.Invariant($"Band \"{name}\": upper[{i}] is {Upper[i]}, below lower[{i}], {Lower[i]}."));
        }
    }

    /// <summary>What the reader sees in the key.</summary>
    public string Name { get; }

    /// <summary>Horizontal positions, ascending, in the unit of the panel's x axis.</summary>
    public IReadOnlyList<double> X { get; }

    /// <summary>Lower edge in the unit of the panel's y axis; as many as <see cref="X"/>.</summary>
    public IReadOnlyList<double> Lower { get; }

    /// <summary>Upper edge in the unit of the panel's y axis; as many as <see cref="X"/>.</summary>
    public IReadOnlyList<double> Upper { get; }

    /// <summary>The voice of the band; neutral unless said otherwise.</summary>
    public Tone Tone { get; init; } = Tone.Neutral;
}
