using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The bags that a clinic has: strengths, each in its sizes. What is not on the shelf is not prescribed; what is opened counts whole.</summary>
public sealed record BagShelf
{
    private readonly ImmutableDictionary<DialysisSolution, ImmutableArray<Volume>> sizes;

    /// <summary>A shelf.</summary>
    /// <param name="bags">One of each kind; whether it is for the day does not matter.</param>
    /// <exception cref="ArgumentException">There is none, or a bag holds a mix: a shelf has what is mixed, not the mix.</exception>
    public BagShelf(params IEnumerable<FluidBag> bags)
    {
        Bags = [.. bags.Select(bag => bag with { IsForDay = false }).Distinct().OrderBy(bag => bag.Solution.Glucose).ThenBy(bag => bag.Solution.Name, StringComparer.Ordinal).ThenBy(bag => bag.Volume)];
        sizes = Bags.GroupBy(bag => bag.Solution).ToImmutableDictionary(group => group.Key, group => group.Select(bag => bag.Volume).ToImmutableArray());
        if (Bags.IsEmpty || Bags.Any(bag => bag.Solution.Mix is not null))
        {
            throw new ArgumentException("Expected a bag or more, each of one solution: a shelf has what is mixed, not the mix.", nameof(bags));
        }
    }

    /// <summary>Every bag there is, weakest and smallest first.</summary>
    public ImmutableArray<FluidBag> Bags { get; }

    /// <summary>The glucose solutions there are, weakest first.</summary>
    public ImmutableArray<DialysisSolution> Glucose => [.. Bags.Select(bag => bag.Solution).Where(solution => solution.Agent == OsmoticAgent.Glucose).Distinct()];

    /// <summary>The three usual glucose strengths and icodextrin in the usual sizes, icodextrin in 2 and 2.5 L (memory).</summary>
    public static BagShelf Usual { get; } = new(
        [
            .. DialysisSolution.UsualGlucose.SelectMany(solution => FluidBag.UsualVolumes.Select(volume => new FluidBag(solution, volume))),
            .. new[] { 2, 2.5 }.Select(liters => new FluidBag(DialysisSolution.Icodextrin, Volume.FromLiters(liters))),
        ]);

    /// <summary>The glucose solutions, and between each and every stronger one what a machine mixes of them in these parts.</summary>
    /// <param name="parts">Parts of the weaker and of the stronger one: 1 and 1, 5 and 3.</param>
    public ImmutableArray<DialysisSolution> WithMixes(params IEnumerable<(double Weaker, double Stronger)> parts)
    {
        var glucose = Glucose;
        return
        [
            .. glucose,
            .. from part in parts.Distinct()
               from weaker in Enumerable.Range(0, glucose.Length)
               from stronger in Enumerable.Range(weaker + 1, glucose.Length - weaker - 1)
               select new SolutionMix(glucose[weaker], part.Weaker, glucose[stronger], part.Stronger).ToSolution(),
        ];
    }

    /// <summary>Whether everything that a regimen takes is there, and for a day fill a bag that is large enough.</summary>
    public bool Holds(Regimen regimen)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        return Holds(regimen.Night) && Holds(regimen.Day) && regimen.Day.All(exchange =>
            exchange.Solution.Bags.All(bag => sizes[bag.Solution].Max() + Volume.FromMilliliters(0.5) >= exchange.Fill * bag.Share));
    }

    /// <summary>The bags that are opened for 24 h, of each solution: those that leave least over, of these the fewest.</summary>
    /// <exception cref="ArgumentException">The shelf does not hold what the regimen takes.</exception>
    public ImmutableArray<BagCover> For(Regimen regimen)
    {
        ArgumentNullException.ThrowIfNull(regimen);
        return Holds(regimen.Night) && Holds(regimen.Day)
            ? BagCover.Of(regimen, solution => sizes[solution])
            : throw new ArgumentException("The shelf does not hold what the regimen takes.", nameof(regimen));
    }

    /// <summary>Equal if the bags are.</summary>
    public bool Equals(BagShelf? other) => other is not null && Bags.SequenceEqual(other.Bags);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Bags.Length, Bags[0]);

    /// <summary>"glucose 1.36 % in 2, 5 L; …".</summary>
    public override string ToString() => string.Join("; ", Bags.GroupBy(bag => bag.Solution).Select(group =>
        $"{group.Key.Name} in {string.Join(", ", group.Select(bag => bag.Volume.Liters.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)))} L"));

    private bool Holds(ImmutableArray<Exchange> exchanges)
    {
        foreach (var exchange in exchanges)
        {
            foreach (var (solution, _) in exchange.Solution.Bags)
            {
                if (!sizes.ContainsKey(solution))
                {
                    return false;
                }
            }
        }

        return true;
    }
}
