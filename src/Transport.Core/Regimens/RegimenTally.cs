using System.Collections.Immutable;

namespace Transport;

/// <summary>Adds the phases of a day up to its outcome.</summary>
internal static class RegimenTally
{
    private const int Stride = 6;

    public static RegimenOutcome Of(
        Patient patient,
        ThreePoreMembrane membrane,
        Regimen regimen,
        RegimenOptions options,
        ReadOnlySpan<PhaseRecord> phases,
        ReadOnlySpan<double> starts,
        ReadOnlySpan<double> end,
        IReadOnlyList<TimelinePoint>? timeline)
    {
        double urea = 0, creatinine = 0, glucose = 0, sodium = 0, ultrasmall = 0, small = 0, large = 0, open = 0, minimum = double.PositiveInfinity;
        var eveningDrain = 0.0;
        var fullest = 0;
        for (var k = 0; k < phases.Length; k++)
        {
            ref readonly var phase = ref phases[k];
            urea += phase.DrainedUrea;
            creatinine += phase.DrainedCreatinine;
            glucose += phase.DrainedGlucose;
            sodium += phase.DrainedSodium;
            ultrasmall += phase.Ultrasmall;
            small += phase.Small;
            large += phase.Large;
            open += phase.Open;
            minimum = Math.Min(minimum, phase.Minimum);
            eveningDrain += phase.Kind == RegimenPhase.EveningDrain ? phase.Drained : 0;
            fullest = phase.Peak > phases[fullest].Peak ? k : fullest;
        }

        var (glucoseIn, sodiumIn) = Infused(regimen);
        var plasma = patient.Plasma;
        return new()
        {
            Patient = patient,
            Membrane = membrane,
            Regimen = regimen,
            Options = options,
            Cycles = Cycles(regimen, phases, starts),
            EveningDrain = Volume.FromMilliliters(eveningDrain),
            PoreVolumes = new(Volume.FromMilliliters(ultrasmall), Volume.FromMilliliters(small), Volume.FromMilliliters(large)),
            LymphaticRemoval = Volume.FromMilliliters(membrane.LymphaticRemoval.MillilitersPerMinute * open),
            VolumeChange = Volume.FromMilliliters(end[0] - starts[1]),
            PeritonealUreaClearance = Clearance.FromLitersPerDay(urea / 1000 / plasma.Urea.MillimolesPerLiter),
            PeritonealCreatinineClearance = Clearance.FromLitersPerDay(creatinine / 1000 / plasma.Creatinine.MillimolesPerLiter),
            GlucoseUsed = Grams(glucoseIn),
            GlucoseAbsorbed = Grams(glucoseIn - glucose - (end[1 + SolutePanel.Glucose] - starts[2 + SolutePanel.Glucose])),
            SodiumRemovedByModel = AmountOfSubstance.FromMicromoles(sodium - sodiumIn),
            Peak = new(
                Volume.FromMilliliters(phases[fullest].Peak), TimeSpan.FromMinutes(phases[fullest].PeakTime), phases[fullest].Kind),
            SmallestVolume = Volume.FromMilliliters(minimum),
            Timeline = timeline is null ? [] : [.. timeline],
        };
    }

    private static (double Glucose, double Sodium) Infused(Regimen regimen)
    {
        double glucose = 0, sodium = 0;
        foreach (var exchange in regimen.Night)
        {
            glucose += exchange.Fill.Milliliters * exchange.Solution.Glucose.MillimolesPerLiter;
            sodium += exchange.Fill.Milliliters * exchange.Solution.Sodium.MillimolesPerLiter;
        }

        if (regimen.DayFill is { } fill)
        {
            glucose += fill.Volume.Milliliters * fill.Solution.Glucose.MillimolesPerLiter;
            sodium += fill.Volume.Milliliters * fill.Solution.Sodium.MillimolesPerLiter;
        }

        return (glucose, sodium);
    }

    private static Mass Grams(double micromoles) => Mass.FromGrams(micromoles * 1e-6 * Solutes.Glucose.MolarMassGramsPerMole);

    private static ImmutableArray<CycleOutcome> Cycles(Regimen regimen, ReadOnlySpan<PhaseRecord> phases, ReadOnlySpan<double> starts)
    {
        var cycles = ImmutableArray.CreateBuilder<CycleOutcome>(regimen.Cycles);
        for (var i = 0; i < regimen.Cycles; i++)
        {
            ref readonly var fill = ref phases[3 * i];
            ref readonly var dwell = ref phases[3 * i + 1];
            ref readonly var drain = ref phases[3 * i + 2];
            cycles.Add(new(
                regimen.Night[i].Fill,
                Volume.FromMilliliters(drain.Drained),
                TimeSpan.FromMinutes(fill.Start),
                TimeSpan.FromMinutes(dwell.End - dwell.Start),
                TimeSpan.FromMinutes(drain.End - drain.Start),
                Carried(starts.Slice(3 * i * Stride + 1, Stride - 1))));
        }

        return cycles.MoveToImmutable();
    }

    private static ResidualFluid Carried(ReadOnlySpan<double> state)
    {
        var volume = state[0];
        return new()
        {
            Volume = Volume.FromMilliliters(volume),
            Urea = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Urea] / volume),
            Creatinine = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Creatinine] / volume),
            Glucose = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Glucose] / volume),
            Sodium = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Sodium] / volume),
        };
    }
}
