namespace Transport.Analysis;

/// <summary>One exchange by hand, as a book has it.</summary>
/// <param name="Number">Which of the day, from 1.</param>
/// <param name="Filled">What ran in, by weight or label.</param>
/// <param name="Drained">What ran out.</param>
/// <param name="Flushed">What was flushed from the fresh bag into the drain bag before the fill, which is in neither patient nor ultrafiltration.</param>
/// <param name="Began">Clock time, of this number's last one where none is written; null where there never was one.</param>
public sealed record BookExchange(int Number, Volume? Filled, Volume? Drained, Volume Flushed, TimeOnly? Began)
{
    /// <summary>What ran in, of this number's last one where nothing is written; null where the book never says.</summary>
    public BookFluid? Fluid { get; init; }

    /// <summary>Drained less filled, without the flush; null where one of the two is missing.</summary>
    public Volume? Ultrafiltration => Drained - Filled - Flushed;
}
