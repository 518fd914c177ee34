namespace Transport;

/// <summary>The phases of a rhythm, one after another, with the times at which dwells are planned to end.</summary>
internal sealed class RegimenPlan
{
    private readonly List<PlannedPhase> phases = [];

    /// <param name="days">What is done on each day; null: nothing.</param>
    /// <param name="residual">Volume left after a complete drain, mL.</param>
    public RegimenPlan(ReadOnlySpan<Regimen?> days, double residual)
    {
        Days = days.Length;
        for (var day = 0; day < days.Length; day++)
        {
            if (days[day] is { } regimen)
            {
                Add(day, regimen, new(regimen, residual));
            }
            else
            {
                Add(RegimenPhase.Day, day, null, 0, null, Clock(day, RegimenSchedule.MinutesPerDay));
            }

            Add(RegimenPhase.EveningDrain, day, days[day], 0, null, 0);
        }
    }

    /// <summary>How many days the rhythm has.</summary>
    public int Days { get; }

    public int Count => phases.Count;

    public PlannedPhase this[int phase] => phases[phase];

    private void Add(int day, Regimen regimen, in RegimenSchedule schedule)
    {
        if (regimen.Night.IsEmpty)
        {
            Add(RegimenPhase.Dwell, day, regimen, 0, null, Clock(day, regimen.NightLength.TotalMinutes));
        }

        for (var i = 0; i < regimen.Night.Length; i++)
        {
            Add(RegimenPhase.Fill, day, regimen, i, regimen.Night[i], 0);
            Add(RegimenPhase.Dwell, day, regimen, i, regimen.Night[i], Clock(day, schedule.Night[i].DrainStart), schedule.Night[i].Dwell);
            Add(RegimenPhase.Drain, day, regimen, i, regimen.Night[i], 0);
        }

        for (var i = 0; i < regimen.Day.Length; i++)
        {
            var stays = i == regimen.Day.Length - 1 && !schedule.DayEndsDry;
            Add(RegimenPhase.DayFill, day, regimen, i, regimen.Day[i], 0);
            Add(
                RegimenPhase.Day,
                day,
                regimen,
                i,
                regimen.Day[i],
                Clock(day, stays ? RegimenSchedule.MinutesPerDay - schedule.Day[i].Drain : schedule.Day[i].DrainStart),
                schedule.Day[i].Dwell);
            if (!stays)
            {
                Add(RegimenPhase.DayDrain, day, regimen, i, regimen.Day[i], 0);
            }
        }

        if (regimen.Day.IsEmpty || schedule.DayEndsDry)
        {
            Add(RegimenPhase.Day, day, regimen, regimen.Day.Length, null, Clock(day, RegimenSchedule.MinutesPerDay));
        }
    }

    private void Add(RegimenPhase kind, int day, Regimen? regimen, int index, Exchange? exchange, double end, double length = 0) =>
        phases.Add(new(kind, day, regimen, index, exchange, end, length));

    private static double Clock(int day, double minutes) => day * RegimenSchedule.MinutesPerDay + minutes;
}
