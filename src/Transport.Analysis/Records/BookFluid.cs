using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The fluid of a night or a day as a book names it: one strength, or bags that are taken as mixed.</summary>
/// <param name="Solution">What enters the cavity: of several bags the mean strength by volume, which takes it that they mix.</param>
/// <param name="Bags">The bags, where the book names them.</param>
public sealed record BookFluid(DialysisSolution Solution, ImmutableArray<BookBag> Bags)
{
    /// <summary>Whether the strongest glucose is among it: above 180 mmol/L, between 2.27 and 3.86 %.</summary>
    public bool HoldsStrongest => Bags.IsEmpty ? RegimenFindings.IsStrongest(Solution) : Bags.Any(bag => RegimenFindings.IsStrongest(bag.Solution));

    /// <summary>Equal where the solution and the bags are.</summary>
    public bool Equals(BookFluid? other) => other is not null && Solution == other.Solution && Bags.SequenceEqual(other.Bags);

    /// <inheritdoc/>
    public override int GetHashCode() => Solution.GetHashCode();
}
