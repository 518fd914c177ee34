using System.Collections.Immutable;

namespace Transport;

/// <summary>Adds the phases of a day up to its outcome.</summary>
internal static class RegimenTally
{
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
        var panel = SolutePanel.Small.With(regimen.Polymer);
        var stride = starts.Length / phases.Length;
        double polymer = 0;
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
            polymer += phase.DrainedPolymer;
            ultrasmall += phase.Ultrasmall;
            small += phase.Small;
            large += phase.Large;
            open += phase.Open;
            minimum = Math.Min(minimum, phase.Minimum);
            eveningDrain += phase.Kind == RegimenPhase.EveningDrain ? phase.Drained : 0;
            fullest = phase.Peak > phases[fullest].Peak ? k : fullest;
        }

        var (glucoseIn, sodiumIn) = Infused(regimen);
        var polymerIn = Exchanges(regimen).Sum(exchange => exchange.Volume.Liters * (exchange.Solution.Polymer?.GramsPerLiter ?? 0));
        var plasma = patient.Plasma;
        return new()
        {
            Patient = patient,
            Membrane = membrane,
            Regimen = regimen,
            Options = options,
            Cycles = Cycles(regimen, panel, phases, starts, stride),
            EveningDrain = Volume.FromMilliliters(eveningDrain),
            PoreVolumes = new(Volume.FromMilliliters(ultrasmall), Volume.FromMilliliters(small), Volume.FromMilliliters(large)),
            LymphaticRemoval = Volume.FromMilliliters(membrane.LymphaticRemoval.MillilitersPerMinute * open),
            VolumeChange = Volume.FromMilliliters(end[0] - starts[1]),
            PeritonealUreaClearance = Clearance.FromLitersPerDay(urea / 1000 / plasma.Urea.MillimolesPerLiter),
            PeritonealCreatinineClearance = Clearance.FromLitersPerDay(creatinine / 1000 / plasma.Creatinine.MillimolesPerLiter),
            GlucoseUsed = Grams(glucoseIn),
            GlucoseAbsorbed = Grams(glucoseIn - glucose - (end[1 + SolutePanel.Glucose] - starts[2 + SolutePanel.Glucose])),
            PolymerUsed = Mass.FromGrams(polymerIn),
            PolymerAbsorbed = Mass.FromGrams(polymerIn - 1e-6 * (polymer + PolymerOf(panel, end) - PolymerOf(panel, starts.Slice(1, stride - 1)))),
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
        foreach (var (solution, volume) in Exchanges(regimen))
        {
            glucose += volume.Milliliters * solution.Glucose.MillimolesPerLiter;
            sodium += volume.Milliliters * solution.Sodium.MillimolesPerLiter;
        }

        return (glucose, sodium);
    }

    private static IEnumerable<(DialysisSolution Solution, Volume Volume)> Exchanges(Regimen regimen)
    {
        foreach (var exchange in regimen.Night)
        {
            yield return (exchange.Solution, exchange.Fill);
        }

        if (regimen.DayFill is { } fill)
        {
            yield return (fill.Solution, fill.Volume);
        }
    }

    // µg, of a state that begins with the volume.
    private static double PolymerOf(SolutePanel panel, ReadOnlySpan<double> state)
    {
        var sum = 0.0;
        for (var i = panel.PolymerStart; i < panel.Count; i++)
        {
            sum += state[1 + i] * panel.Solutes[i].MolarMassGramsPerMole;
        }

        return sum;
    }

    private static Mass Grams(double micromoles) => Mass.FromGrams(micromoles * 1e-6 * Solutes.Glucose.MolarMassGramsPerMole);

    private static ImmutableArray<CycleOutcome> Cycles(
        Regimen regimen, SolutePanel panel, ReadOnlySpan<PhaseRecord> phases, ReadOnlySpan<double> starts, int stride)
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
                Carried(panel, starts.Slice(3 * i * stride + 1, stride - 1))));
        }

        return cycles.MoveToImmutable();
    }

    private static ResidualFluid Carried(SolutePanel panel, ReadOnlySpan<double> state)
    {
        var volume = state[0];
        var others = OtherSolutes.None;
        for (var i = panel.PolymerStart; i < panel.Count; i++)
        {
            others = others.Add(panel.Solutes[i], Concentration.FromMillimolesPerLiter(state[1 + i] / volume));
        }

        return new()
        {
            Volume = Volume.FromMilliliters(volume),
            Urea = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Urea] / volume),
            Creatinine = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Creatinine] / volume),
            Glucose = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Glucose] / volume),
            Sodium = Concentration.FromMillimolesPerLiter(state[1 + SolutePanel.Sodium] / volume),
            Others = others,
        };
    }
}
