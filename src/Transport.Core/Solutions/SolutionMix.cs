using System.Collections.Immutable;
using System.Globalization;

namespace Transport;

/// <summary>Two glucose solutions that a machine mixes into one: what lies on its heater with what hangs beside it.</summary>
/// <remarks>Every concentration of the mix is the mean of the two by volume. By hand nothing is mixed.</remarks>
public sealed record SolutionMix
{
    /// <summary>So many parts of one with so many of the other, by volume: 5 L and 3 L are 5 and 3.</summary>
    /// <param name="first">One bag's solution.</param>
    /// <param name="firstParts">Its parts.</param>
    /// <param name="second">The other bag's.</param>
    /// <param name="secondParts">Its parts.</param>
    /// <exception cref="ArgumentException">One is no glucose solution or a mix itself, or both are the same.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number of parts is not above zero and at most a million.</exception>
    public SolutionMix(DialysisSolution first, double firstParts, DialysisSolution second, double secondParts)
    {
        (First, Second) = (OfOneBag(first, nameof(first)), OfOneBag(second, nameof(second)));
        FirstParts = Require.InRange(Require.Positive(firstParts, "parts"), 0, 1e6, "parts", nameof(firstParts));
        SecondParts = Require.InRange(Require.Positive(secondParts, "parts"), 0, 1e6, "parts", nameof(secondParts));
        if (first == second)
        {
            throw new ArgumentException($"Expected two solutions, and both are {first.Name}.", nameof(second));
        }
    }

    /// <summary>One bag's solution.</summary>
    public DialysisSolution First { get; }

    /// <summary>Its parts by volume.</summary>
    public double FirstParts { get; }

    /// <summary>The other bag's solution.</summary>
    public DialysisSolution Second { get; }

    /// <summary>Its parts by volume.</summary>
    public double SecondParts { get; }

    /// <summary>The first one's share of the volume.</summary>
    public double FirstShare => FirstParts / (FirstParts + SecondParts);

    /// <summary>What runs in.</summary>
    public DialysisSolution ToSolution() => new(
        string.Create(CultureInfo.InvariantCulture, $"mix {FirstParts:0.###}:{SecondParts:0.###} of {First.Name} and {Second.Name}"),
        Mean(First.Glucose, Second.Glucose),
        Mean(First.Sodium, Second.Sodium))
    {
        Others = Others(),
        Mix = this,
    };

    private ImmutableDictionary<Solute, Concentration> Others() => First.Others.Keys.Union(Second.Others.Keys).ToImmutableDictionary(
        solute => solute, solute => Mean(First.Others.GetValueOrDefault(solute), Second.Others.GetValueOrDefault(solute)));

    private Concentration Mean(Concentration first, Concentration second) => first == second
        ? first
        : Concentration.FromMillimolesPerLiter((FirstParts * first.MillimolesPerLiter + SecondParts * second.MillimolesPerLiter) / (FirstParts + SecondParts));

    private static DialysisSolution OfOneBag(DialysisSolution solution, string name)
    {
        ArgumentNullException.ThrowIfNull(solution, name);
        return solution is { Agent: OsmoticAgent.Glucose, Mix: null }
            ? solution
            : throw new ArgumentException($"Only glucose solutions of one bag each are mixed, and {solution.Name} is none.", name);
    }
}
