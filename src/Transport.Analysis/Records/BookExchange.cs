namespace Transport.Analysis;

/// <summary>One exchange by hand, as a book has it.</summary>
/// <param name="Number">Which of the day, from 1.</param>
/// <param name="Filled">What ran in, by weight or label.</param>
/// <param name="Drained">What ran out.</param>
/// <param name="Flushed">What was flushed from the fresh bag into the drain bag before the fill, which is in neither patient nor ultrafiltration.</param>
/// <param name="Began">Clock time; null where none is written.</param>
public sealed record BookExchange(int Number, Volume? Filled, Volume? Drained, Volume Flushed, TimeOnly? Began)
{
    /// <summary>Drained less filled, without the flush; null where one of the two is missing.</summary>
    public Volume? Ultrafiltration => Drained - Filled - Flushed;
}
