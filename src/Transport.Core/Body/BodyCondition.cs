namespace Transport;

/// <summary>A pool as a run sees it, and what its generation has to bring about.</summary>
/// <param name="Pool">As it was asked for.</param>
/// <param name="Volume">Its size in this patient.</param>
/// <param name="Renal">Clearance by the kidneys, mL/min.</param>
/// <param name="Other">Clearance by what is neither membrane nor kidney, mL/min.</param>
/// <param name="Level">The plasma level to meet, mmol/L; where the generation is given, about what to expect.</param>
/// <param name="Minutes">When it has to be met, min from the start of the first night; NaN: it is the mean.</param>
internal sealed record BodyCondition(SolutePool Pool, Volume Volume, double Renal, double Other, double Level, double Minutes)
{
    public bool FindsGeneration => Pool.GenerationPerDay is null;

    /// <exception cref="ArgumentException">Nothing says how much of the solute there is, or the sample was taken on a day that the rhythm has not.</exception>
    public static BodyCondition[] Of(Patient patient, BodyKinetics body, SolutePanel panel, TimeOnly nightStart, int days) =>
        [.. body.Pools.Select(pool => Of(patient, pool, panel, nightStart, days))];

    /// <summary>The pool behind the membrane, with its generation as given or as far as it is known.</summary>
    public BodyPool Behind(ThreePoreMembrane membrane, SolutePanel panel) => new(
        panel.IndexOf(Pool.Solute),
        Volume.Milliliters,
        Renal + Other,
        (Pool.GenerationPerDay?.Micromoles ?? 0) / RegimenSchedule.MinutesPerDay,
        PoreCoefficients.AtBloodSide(Pool.Solute, 1, membrane.PlasmaLevel),
        Level);

    private static BodyCondition Of(Patient patient, SolutePool pool, SolutePanel panel, TimeOnly nightStart, int days)
    {
        var index = panel.IndexOf(pool.Solute);
        var measured = pool.GenerationPerDay is null ? pool.Measured : null;
        if (measured?.Day >= days)
        {
            throw new ArgumentException($"{pool.Solute} was measured on day {measured.Day} of a rhythm of {days}.", nameof(pool));
        }

        var renal = pool.RenalClearanceOf(patient).MillilitersPerMinute;
        var other = pool.OtherClearance.MillilitersPerMinute;
        var level = measured?.Level.MillimolesPerLiter
            ?? (Solutes.IsProtein(pool.Solute) ? Expected(pool, renal + other) : CavityContents.Of(patient.Plasma, panel)[index]);
        return level > 0
            ? new(pool, pool.VolumeIn(patient), renal, other, level, measured is null ? double.NaN : PlasmaRhythm.MinutesTo(measured.Time, nightStart) + measured.Day * RegimenSchedule.MinutesPerDay)
            : throw new ArgumentException($"Neither a plasma level nor a generation says how much {pool.Solute} there is.", nameof(pool));
    }

    // The membrane adds about a mL/min, which will do as a start.
    private static double Expected(SolutePool pool, double clearance) =>
        (pool.GenerationPerDay?.Micromoles ?? 0) / RegimenSchedule.MinutesPerDay / (clearance + 1);
}
