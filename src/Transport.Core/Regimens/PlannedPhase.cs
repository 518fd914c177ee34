namespace Transport;

/// <summary>One phase as it is planned.</summary>
/// <param name="Kind">What goes on.</param>
/// <param name="Day">On which day of the rhythm.</param>
/// <param name="Regimen">What is prescribed for that day; null: nothing.</param>
/// <param name="Index">Which exchange of the night, or of the day.</param>
/// <param name="Exchange">The exchange; null while the cavity is dry.</param>
/// <param name="End">When a dwell ends, min; other phases end when they are done.</param>
/// <param name="Length">How long a dwell is planned to be, min; of other phases nothing is said.</param>
internal readonly record struct PlannedPhase(RegimenPhase Kind, int Day, Regimen? Regimen, int Index, Exchange? Exchange, double End, double Length)
{
    public bool IsDrain => Kind is RegimenPhase.Drain or RegimenPhase.DayDrain or RegimenPhase.EveningDrain;

    public bool IsFill => Kind is RegimenPhase.Fill or RegimenPhase.DayFill;

    public bool IsNight => Kind is RegimenPhase.Fill or RegimenPhase.Dwell or RegimenPhase.Drain;
}
