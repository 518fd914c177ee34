namespace Transport.Analysis;

/// <summary>What the book says is to be run, until it says otherwise.</summary>
internal sealed record BookPlan
{
    public static BookPlan Nothing { get; } = new();

    public string Name { get; init; } = "";

    public TimeSpan? NightLength { get; init; }

    public int? Cycles { get; init; }

    public Volume? CycleVolume { get; init; }

    public BookFluid? NightFluid { get; init; }

    /// <summary>Zero where the day is dry; null where nothing is said, which is taken as dry too.</summary>
    public Volume? DayFill { get; init; }

    public BookFluid? DayFluid { get; init; }

    /// <summary>The regimen; null where a part is missing or it cannot be carried out. One object as long as nothing changes.</summary>
    public Regimen? Regimen { get; init; }

    /// <summary>This plan with what a row changes.</summary>
    public BookPlan With(BookCells cells, List<Finding> findings)
    {
        if (!cells.HasAny(BookWords.NightLength, BookWords.Cycles, BookWords.CycleVolume, BookWords.NightFluid, BookWords.DayFill, BookWords.DayFluid))
        {
            return this;
        }

        var dryByWord = SheetWords.Normal(cells.Text(BookWords.DayFluid)) is "dry" or "0";
        var changed = this with
        {
            NightLength = cells.Hours(BookWords.NightLength) ?? NightLength,
            Cycles = cells.Number(BookWords.Cycles) is { } cycles ? (int)Math.Round(cycles) : Cycles,
            CycleVolume = cells.Milliliters(BookWords.CycleVolume) ?? CycleVolume,
            NightFluid = cells.Fluid(BookWords.NightFluid) ?? NightFluid,
            DayFill = dryByWord ? default(Volume) : cells.Milliliters(BookWords.DayFill) ?? DayFill,
            DayFluid = dryByWord ? null : cells.Fluid(BookWords.DayFluid) ?? DayFluid,
        };
        return Same(changed) ? this : changed with { Regimen = changed.Made(cells.Row, findings) };
    }

    private bool Same(BookPlan other) =>
        NightLength == other.NightLength && Cycles == other.Cycles && CycleVolume == other.CycleVolume && DayFill == other.DayFill
        && Equals(NightFluid, other.NightFluid) && Equals(DayFluid, other.DayFluid);

    private Regimen? Made(int row, List<Finding> findings)
    {
        if (NightLength is not { } length || Cycles is not { } cycles || CycleVolume is not { } volume || NightFluid is null)
        {
            return null;
        }

        try
        {
            var isWet = DayFill is { Milliliters: > 0 };
            return Regimen.Cycling(length, cycles, volume, NightFluid.Solution, isWet ? new((DayFluid ?? NightFluid).Solution, DayFill!.Value) : null);
        }
        catch (RegimenException problem)
        {
            findings.Add(new(Severity.Error, "book-regimen-impossible", $"What the book says is run cannot be carried out, so nothing is expected of these nights: {problem.Message}")
            {
                Row = row,
                Field = "regimen",
            });
            return null;
        }
    }
}
