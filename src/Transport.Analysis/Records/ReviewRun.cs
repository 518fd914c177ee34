using MathNet.Numerics.Statistics;

namespace Transport.Analysis;

/// <summary>One review, night after night.</summary>
internal sealed class ReviewRun
{
    // So many nights in a row are another book or another level, and fewer are odd nights in the same: without what the chart of drains is for, or hardly drained (choice).
    private const int OtherNights = 3;

    private readonly Patient patient;
    private readonly RecordBook book;
    private readonly RecordReviewOptions options;
    private readonly RunControl control;
    private readonly IReadOnlyList<NightRecord> nights;
    private readonly NightResponse?[] responses;
    private readonly double[,] covariance;
    private readonly NightFilter filter;
    private readonly List<Action<NightFilter>>[] taken;
    private readonly Dictionary<NightChannel, ChartRun> charts;
    private readonly LikelihoodChart slowLoss;
    private readonly LikelihoodChart drainFault;
    private readonly List<(int Night, NightChannel? Channel, int Sign)> signals = [];
    private readonly List<Finding> findings = [];
    private int quietUntil;
    private int? initialDrainOn;
    private int unwatched = OtherNights;
    private int retained;
    private (double Night, double InitialDrain) usualOff;

    public ReviewRun(Patient patient, MembraneEnsemble ensemble, RecordBook book, RecordReviewOptions options, RunControl control)
    {
        this.patient = patient;
        this.book = book;
        this.options = options;
        this.control = control;
        nights = Peritonitis.Read(book.Nights, options.Limits);
        responses = Responses(ensemble);
        slowLoss = new(options.Losses);
        drainFault = new(LikelihoodChart.Watch.Drains);
        covariance = CovarianceOf(ensemble);
        filter = new(options.Noise, covariance);
        taken = [.. nights.Select(_ => new List<Action<NightFilter>>())];
        var limits = options.Limits.Charts;
        charts = Enum.GetValues<NightChannel>().ToDictionary(
            channel => channel,
            channel => channel == NightChannel.Ultrafiltration ? new ChartRun(limits.SuddenUltrafiltration, limits.SlowRise) : new ChartRun(limits.Drains));
    }

    public RecordReview Go()
    {
        var counts = BookHabits.Counts(nights, responses, findings);
        var weights = BookHabits.EmptyWeights(nights, findings);
        var leftOut = Peritonitis.DaysLeftOut(nights, Peritonitis.Read([.. book.RowsInDoubt.Where(row => !row.IsOfAnother)], options.Limits), options.Limits);
        var reviewed = new ReviewedNight[nights.Count];
        var charted = 0;
        var lastCharted = -1;
        for (var t = 0; t < nights.Count; t++)
        {
            control.Cancellation.ThrowIfCancellationRequested();
            reviewed[t] = Night(t, counts[t], leftOut[t], ref charted, ref lastCharted) with { EmptyWeight = weights[t] };
        }

        var changes = Changes();
        LevelBefore.Write(reviewed, changes);
        findings.AddRange(DangerSigns.Of(nights, book, patient, options.Limits));
        findings.AddRange(NurseFindings.Of(patient, nights, reviewed, responses, changes, options.Limits, Slow(), book));
        return new()
        {
            Patient = patient,
            Book = book,
            Options = options,
            Nights = reviewed,
            Changes = changes,
            Findings = [.. findings.OrderBy(NurseFindings.Urgency)],
            NightDeviation = charted > 0 ? Volume.FromMilliliters(filter.NightDeviation) : null,
        };
    }

    // Where the slow charts stand, in their own limits; negative where less comes than was expected.
    private double Slow() => Math.Max(0, slowLoss.LogRatio) / SlowLossLimit is > 0 and var loss ? -loss : charts[NightChannel.Ultrafiltration].Slow;

    private double SlowLossLimit => options.Limits.Charts.SlowLossLimit(filter.NightDeviation);

    private NightResponse?[] Responses(MembraneEnsemble ensemble)
    {
        var known = new Dictionary<(Regimen, bool), NightResponse>();
        var workspace = new RegimenWorkspace { SeesLimit = false };
        return [.. nights.Select(night =>
        {
            if (night.Regimen is not { } regimen)
            {
                return null;
            }

            if (!known.TryGetValue((regimen, night.IsByHand), out var response))
            {
                control.Cancellation.ThrowIfCancellationRequested();
                known[(regimen, night.IsByHand)] = response = NightResponse.Of(workspace, patient, ensemble.Center, regimen, options.Tested, night.IsByHand);
            }

            return response;
        })];
    }

    // In the order of the levers. Of LpS the part that acts, the osmotic conductance: what the share of the ultrasmall pores takes from it is given back.
    private static double[,] CovarianceOf(MembraneEnsemble ensemble)
    {
        double[][] columns =
        [
            [.. ensemble.DiffusionAreas.Select(Math.Log)],
            [.. ensemble.GlucosePermeabilityScales.Select(Math.Log)],
            [.. Enumerable.Range(0, ensemble.Count).Select(member => Math.Log(ensemble[member].OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury))],
            [.. ensemble.TransientAmplitudes.Select(amplitude => Math.Log(Math.Max(1e-6, amplitude)))],
            [.. ensemble.LymphaticRemovals],
        ];
        var covariance = new double[columns.Length, columns.Length];
        for (var i = 0; i < columns.Length; i++)
        {
            for (var j = 0; j < columns.Length; j++)
            {
                covariance[i, j] = ensemble.Count > 1 ? columns[i].Covariance(columns[j]) : 0;
            }
        }

        return covariance;
    }

    private ReviewedNight Night(int t, UltrafiltrationCount count, string leftOut, ref int charted, ref int lastCharted)
    {
        var record = nights[t];
        var blank = new ReviewedNight { Record = record };
        if (responses[t] is not { } response)
        {
            return blank with { LeftOut = record.Regimen is null ? "no regimen is written" : "" };
        }

        if (record.IsSkipped)
        {
            return blank with { LeftOut = "not treated" };
        }

        var lost = DwellTime.Lost(record, response);
        var glucose = record.BloodGlucose is { } measured
            ? Math.Clamp((measured - patient.Plasma.Glucose).MillimolesPerLiter, -5, 20)
            : 0;
        var nightCorrection = lost * response.OfNight(NightLever.LostDwell) + glucose * response.OfNight(NightLever.PlasmaGlucose);
        var expected = response.Night + nightCorrection;
        var before = NightBefore.Of(nights, responses, t);
        var dayCorrection = glucose * before?.OfInitialDrain(NightLever.PlasmaGlucose) ?? 0;
        var expectedDrain = before?.InitialDrain + dayCorrection;
        var (observed, holdsDay) = response.IsByHand ? OfHand(record) : UltrafiltrationOf(record, before?.DayFill, count);
        var foreseen = holdsDay && !response.IsByHand ? expected + expectedDrain - before?.DayFill : expected;
        var isRetained = IsRetained(record, response, observed, foreseen + usualOff.Night, before?.DayFill, expectedDrain + usualOff.InitialDrain);
        retained = isRetained ? retained + 1 : 0;
        leftOut = retained is > 0 and <= OtherNights && leftOut.Length == 0 ? "hardly drained" : leftOut;
        var learns = leftOut.Length == 0;
        var from = filter.Steps.Count;
        var days = lastCharted < 0 ? 1 : nights[t].Date.DayNumber - nights[lastCharted].Date.DayNumber;
        Pass(by => by.Next(response, before, days));
        lastCharted = t;
        var readings = new List<NightReading>();
        if (record.InitialDrain is { } drain && before is not null && !response.IsByHand)
        {
            readings.Add(Take(by => by.InitialDrain(before, expectedDrain!.Value, drain.Milliliters, learns)));
        }

        if (response.FirstCycle is { } first && !response.IsByHand && record.CycleDrains.Length == response.Regimen.Cycles)
        {
            var cycles = record.CycleDrains.Zip(response.Regimen.Night, (drained, exchange) => (drained - exchange.Fill).Milliliters).ToArray();
            readings.Add(Take(by => by.FirstCycle(first, cycles[0] - cycles[1..^1].Average(), learns)));
        }

        if (observed is { } uf)
        {
            readings.Add(Take(by => holdsDay
                ? by.NightAndDay(response, response.IsByHand ? response : before!, foreseen!.Value, uf, learns)
                : by.Night(response, expected, uf, learns)));
        }

        usualOff = (OffOf(NightChannel.Ultrafiltration, foreseen) ?? usualOff.Night, OffOf(NightChannel.InitialDrain, expectedDrain) ?? usualOff.InitialDrain);
        if (record.DrainTime is { } minutes && !response.IsByHand)
        {
            readings.Add(Take(by => by.DrainTime(response.DrainTime, minutes.TotalMinutes, learns)));
        }

        Band<TimeSpan>? expectedDwell = null;
        if (!response.IsByHand)
        {
            // What is not written is foreseen all the same, and nothing is learned from it.
            var planned = DwellTime.Expected(record, response);
            var dwell = Take(by => by.AverageDwell(planned, record.AverageDwell?.TotalMinutes ?? planned, learns && record.AverageDwell is not null));
            expectedDwell = Around(dwell.Expected, dwell.Deviation, TimeSpan.FromMinutes, Doubt.NightToNight);
            if (record.AverageDwell is not null)
            {
                readings.Add(dwell);
            }
        }

        slowLoss.Take(record, response, before, filter.Steps.Skip(from));
        initialDrainOn = record.InitialDrain is null ? initialDrainOn : record.Date.DayNumber;
        unwatched = WatchesDrains(record, before) ? 0 : unwatched + 1;
        if (unwatched < OtherNights)
        {
            drainFault.Take(record, response, before, filter.Steps.Skip(from));
        }
        else
        {
            drainFault.Reset();
        }

        var lossLogRatio = slowLoss.LogRatio;
        if (learns && readings.Count > 0)
        {
            charted++;
            Chart(t, readings, charted);
        }

        return blank with
        {
            Ultrafiltration = observed is { } seen ? Volume.FromMilliliters(seen) : null,
            HoldsDay = holdsDay,
            Expected = BandOf(readings.Find(reading => reading.Channel == NightChannel.Ultrafiltration)),
            ExpectedInitialDrain = BandOf(readings.Find(reading => reading.Channel == NightChannel.InitialDrain))?.Select(AtLeastNothing),
            ExpectedDwell = expectedDwell,
            Readings = readings,
            LeftOut = leftOut,
            IsRetained = isRetained,
            LossLogRatio = lossLogRatio,
            Basis = new(response, before, nightCorrection, dayCorrection),
        };

        // How far the level that was learned is from the test.
        double? OffOf(NightChannel channel, double? byTest) => readings.Find(reading => reading.Channel == channel)?.Expected - byTest;

        // Kept, so that it can be gone through again (Again).
        void Pass(Action<NightFilter> step)
        {
            taken[t].Add(step);
            step(filter);
        }

        NightReading Take(Func<NightFilter, NightReading> reading)
        {
            taken[t].Add(by => reading(by));
            return reading(filter);
        }
    }

    // A night that keeps half a fill and is a whole one short of what this person's bring, or an evening that brings next to nothing of a day's fill that usually comes, tells of drains or of the book, and of
    // no membrane.
    private static bool IsRetained(NightRecord record, NightResponse response, double? observed, double? usual, double? dayFill, double? usualDrain) =>
        observed < -DrainFindings.HalfFill * response.LargestFill && observed - usual < -response.LargestFill
        || dayFill > 0 && record.InitialDrain?.Milliliters is { } drain && drain < DrainFindings.StoppedShare * usualDrain && usualDrain - drain > DrainFindings.HalfFill * dayFill;

    // The same nights as they would be believed had nothing been learned anew since the last signal before this one: charts begin again after a signal, but what a change comes to is asked of all nights
    // since, and a level that was opened again would take most of it.
    private List<(int Night, FilterStep Step)> Again(int signal, int last)
    {
        var (again, steps) = (new NightFilter(options.Noise, covariance), new List<(int Night, FilterStep Step)>());
        for (var t = 0; t <= last; t++)
        {
            var from = again.Steps.Count;
            taken[t].ForEach(step => step(again));
            steps.AddRange(again.Steps.Skip(from).Select(step => (t, step)));
            if (t < signal && signals.Exists(earlier => earlier.Night == t))
            {
                again.Reopen();
            }
        }

        return steps;
    }

    // Night and day are one: of the bags where all are weighed, else the total, which counts all of them whatever the book says of nights.
    private static (double? Value, bool HoldsDay) OfHand(NightRecord record) => ((record.UltrafiltrationByBags ?? record.WrittenUltrafiltration)?.Milliliters, true);

    // By the bags where all are written; else the total less what it counts beside the night.
    private static (double? Value, bool HoldsDay) UltrafiltrationOf(NightRecord record, double? dayFill, UltrafiltrationCount count)
    {
        if (record.CycleDrains.Length > 0 && record.UltrafiltrationByBags is { } bags)
        {
            return (bags.Milliliters, false);
        }

        return (record.WrittenUltrafiltration?.Milliliters, record.InitialDrain?.Milliliters, count) switch
        {
            (null, _, _) => (null, false),
            ({ } total, _, UltrafiltrationCount.Night) => (total, false),
            ({ } total, { } drain, UltrafiltrationCount.NightAndDay) => (total - drain + (dayFill ?? 0), false),
            ({ } total, { } drain, _) => (total - drain, false),
            _ when dayFill is null => (null, false),
            ({ } total, null, UltrafiltrationCount.NightAndDay) => (total, true),
            ({ } total, null, _) => (total - dayFill, true),
        };
    }

    private void Chart(int t, List<NightReading> readings, int charted)
    {
        var isQuiet = charted <= Math.Max(options.Limits.LearningNights.Value, quietUntil);
        foreach (var reading in readings)
        {
            var sign = charts[reading.Channel].Take(reading.Score);
            if (sign != 0 && isQuiet)
            {
                charts[reading.Channel].Reset();
            }
            else if (sign != 0)
            {
                Signal(t, reading.Channel, sign, charted);
                return;
            }
        }

        foreach (var (chart, limit, channel) in LikelihoodCharts())
        {
            if (chart.LogRatio > limit && isQuiet)
            {
                chart.Reset();
            }
            else if (chart.LogRatio > limit)
            {
                Signal(t, channel, -1, charted);
                return;
            }
        }
    }

    // Of drains no single channel: what stays behind moves initial drain and ultrafiltration against each other.
    private (LikelihoodChart Chart, double Limit, NightChannel? Channel)[] LikelihoodCharts() =>
        [(slowLoss, SlowLossLimit, NightChannel.Ultrafiltration), (drainFault, options.Limits.Charts.DrainFaultLogRatio, null)];

    // Cycles and drain times show a drain fault by themselves, as the initial drain does after a dry day. Whether the book has an initial drain is asked of what is written by then.
    private bool WatchesDrains(NightRecord record, NightResponse? before) =>
        record.Date.DayNumber - initialDrainOn <= LikelihoodChart.Watch.Drains.Longest && before?.DayFill > 0 && record.CycleDrains.IsEmpty && record.DrainTime is null;

    private void Signal(int t, NightChannel? channel, int sign, int charted)
    {
        signals.Add((t, channel, sign));
        quietUntil = charted + (int)options.Limits.RelearningNights.Value;
        filter.Reopen();
        slowLoss.Reset();
        drainFault.Reset();
        foreach (var chart in charts.Values)
        {
            chart.Reset();
        }
    }

    private List<ChangeFound> Changes()
    {
        var changes = new List<ChangeFound>();
        (int Night, NightChannel? Channel, int Sign) told = default;
        for (var i = 0; i < signals.Count; i++)
        {
            var (night, channel, sign) = signals[i];

            // A few weeks of nights after the signal help to tell what it was, until the next one.
            var last = Math.Min(i + 1 < signals.Count ? signals[i + 1].Night : nights.Count - 1, night + 28);
            while (last > night && responses[last] is null)
            {
                last--;
            }

            var found = ChangeSearch.Run(night, nights, responses, Again(night, last), last);
            if (changes.LastOrDefault() is { } earlier && nights[found.Began].Date <= earlier.SignalledOn && found.Explanations[0].Cause == earlier.Explanations[0].Cause)
            {
                // The same change, seen again while its size was still being learned: now more of it is known.
                changes[^1] = Found(ChangeSearch.Run(told.Night, nights, responses, Again(told.Night, last), last), told, last);
                continue;
            }

            told = signals[i];
            changes.Add(Found(found, told, last));
        }

        return changes;
    }

    private ChangeFound Found(SearchedChange found, (int Night, NightChannel? Channel, int Sign) signal, int last) => new()
    {
        SignalledOn = nights[signal.Night].Date,
        Channel = signal.Channel,
        IsDownward = signal.Sign < 0,
        Began = nights[found.Began].Date,
        // It may have begun on a night that was not written.
        BeganEarliest = found.Earliest == 0 ? nights[0].Date : nights[found.Earliest - 1].Date.AddDays(1),
        BeganLatest = nights[found.Latest].Date,
        LookedAtUntil = nights[last].Date,
        Size = Size(found.Ultrafiltration),
        HoldsDay = found.HoldsDay,
        InitialDrainSize = Size(found.InitialDrain),
        Explanations = found.Explanations,
    };

    private static Band<Volume>? Size((double Mean, double Deviation)? size) =>
        size is { } known ? Around(known.Mean, known.Deviation, Volume.FromMilliliters, Doubt.Parameters | Doubt.NightToNight) : null;

    private static Band<Volume>? BandOf(NightReading? reading) =>
        reading is null ? null : Around(reading.Expected, reading.Deviation, Volume.FromMilliliters, Doubt.Parameters | Doubt.ModelForm | Doubt.NightToNight);

    // A drain brings nothing or something.
    private static Volume AtLeastNothing(Volume volume) => volume < default(Volume) ? default : volume;

    private static Band<T> Around<T>(double mean, double deviation, Func<double, T> of, Doubt doubt)
        where T : struct => new(of(mean), of(mean - NormalDistribution.Quantile95 * deviation), of(mean + NormalDistribution.Quantile95 * deviation), 0.9, doubt);
}
