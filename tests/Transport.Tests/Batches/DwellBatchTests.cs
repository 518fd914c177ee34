namespace Transport.Tests.Batches;

/// <summary>Many dwells side by side against each of them alone.</summary>
public sealed class DwellBatchTests
{
    private static readonly Patient Person = Patient.Example;
    private static readonly TimeSpan[] Times = [.. new[] { 0, 30, 60, 120, 240 }.Select(minutes => TimeSpan.FromMinutes(minutes))];
    private static readonly DwellBatchOptions Options = new() { Panel = SolutePanel.Full };
    private static readonly MembraneEnsemble Ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Person.BodySurface, 150, seed: 7);

    [Fact]
    public void A_lane_of_the_same_dwell_is_that_dwell()
    {
        // The steps are then the same, in eight lanes, in four and in one: only the vector exponential may round differently. Without 512-bit
        // hardware the eight run in software, by the same code.
        var same = Enumerable.Repeat(Case(3), 8).ToArray();
        var alone = Sampled<Real>(same);
        foreach (var lanes in new[] { Sampled<Lanes4>(same), Sampled<Lanes8>(same) })
        {
            Compare(alone, lanes, (expected, _, _) => 1e-12 * Math.Abs(expected) + 1e-15);
        }
    }

    [Fact]
    public void A_batch_of_different_dwells_gives_each_what_it_has_alone_within_the_tolerance()
    {
        // Different membranes, strengths, fills, patients and pores side by side. Each against itself alone at 1e-12: 20 tolerances, the integrator's own
        // bound, of the number and a thousandth of the largest of its kind: the norm of the step control.
        var cases = Mixed();
        var found = DwellBatch.Run(cases, Times, Options with { Integration = new() { RelativeTolerance = 1e-7 } });
        Assert.Empty(found.Failures);
        var exact = Sampled<Real>(cases, 1e-12);
        Compare(exact, found, (expected, _, size) => 2e-6 * (Math.Abs(expected) + size));
    }

    [Fact]
    public void A_batch_agrees_with_the_simulation_of_one_dwell()
    {
        // The same equations by another way in, both at 1e-10: agreement to 1e-8 of volume and 1e-7 of concentrations.
        var integration = new IntegrationOptions { RelativeTolerance = 1e-10 };
        var cases = Enumerable.Range(0, 9).Select(Case).ToArray();
        var found = DwellBatch.Run(cases, Times, Options with { Integration = integration });
        for (var i = 0; i < cases.Length; i++)
        {
            var course = DwellSimulation.Run(Person, Ensemble[i], DwellOf(i), new() { Panel = SolutePanel.Full, Integration = integration });
            for (var k = 0; k < Times.Length; k++)
            {
                Assert.Equal(course.VolumeAt(Times[k]).Milliliters, found.VolumesMilliliters(k)[i], 1e-5);
                var sodium = course.DialysateAt(Solutes.Sodium, Times[k]).MillimolesPerLiter;
                Assert.Equal(sodium, found.ConcentrationsMillimolesPerLiter(Solutes.Sodium, k)[i], 1e-7 * sodium);
                Assert.Equal(course.PoreVolumesAt(Times[k]).Ultrasmall.Milliliters, found.UltrasmallPoreMilliliters(k)[i], 1e-5);
            }
        }
    }

    [Fact]
    public void Samples_are_ends_of_steps_and_more_exact_than_the_course_of_the_same_tolerance()
    {
        // Fifty dwells at 1e-6: urea at a quarter of an hour lies within the first long step. Read from the dense output it is off by several tolerances; a step
        // that ends there is worth at least three times less. Both against 1e-12.
        TimeSpan[] times = [TimeSpan.FromMinutes(15), TimeSpan.FromHours(2)];
        var integration = new IntegrationOptions { RelativeTolerance = 1e-6 };
        var cases = Enumerable.Range(0, 50).Select(Case).ToArray();
        var found = DwellBatch.Run(cases, times, Options with { Integration = integration });
        var exact = DwellBatch.Run(cases, times, Options with { Integration = new() { RelativeTolerance = 1e-12 } });
        double OffUrea(int i, double concentration) => Math.Abs(concentration / exact.ConcentrationsMillimolesPerLiter(Solutes.Urea, 0)[i] - 1);
        var sampled = Enumerable.Range(0, cases.Length).Max(i => OffUrea(i, found.ConcentrationsMillimolesPerLiter(Solutes.Urea, 0)[i]));
        var within = Enumerable.Range(0, cases.Length).Max(i => OffUrea(
            i,
            DwellSimulation.Run(Person, Ensemble[i], DwellOf(i), new() { Panel = SolutePanel.Full, Integration = integration }).DialysateAt(Solutes.Urea, times[0]).MillimolesPerLiter));
        Assert.InRange(within / sampled, 3, double.PositiveInfinity);
        Assert.InRange(sampled, 0, 1e-6);
    }

    [Fact]
    public void A_batch_takes_icodextrin_beside_glucose()
    {
        // The same equations by another way in, both at 1e-10: as above. Beside a polymer a dwell of glucose follows its fractions, of which it has none.
        var integration = new IntegrationOptions { RelativeTolerance = 1e-10 };
        var icodextrin = new Dwell(
            DialysisSolution.Icodextrin, Volume.FromLiters(2), TimeSpan.FromHours(12), ResidualFluid.Used(Volume.FromMilliliters(250), Person.Plasma));
        var cases = Enumerable.Range(0, 9).Select(i => i % 2 == 0 ? new(Person, Ensemble, i, icodextrin) : Case(i)).ToArray();
        var found = DwellBatch.Run(cases, Times, Options with { Integration = integration });
        Assert.Empty(found.Failures);
        for (var i = 0; i < cases.Length; i++)
        {
            var course = DwellSimulation.Run(Person, Ensemble[i], cases[i].Dwell, new() { Panel = SolutePanel.Full, Integration = integration });
            for (var k = 0; k < Times.Length; k++)
            {
                Assert.Equal(course.VolumeAt(Times[k]).Milliliters, found.VolumesMilliliters(k)[i], 1e-5);
                var grams = course.PolymerAt(Times[k]).Grams;
                Assert.Equal(grams, found.PolymerGrams(k, i), 1e-7 * grams);
            }
        }
    }

    [Fact]
    public void The_number_of_cores_changes_nothing()
    {
        // To the bit.
        var cases = Mixed();
        var one = DwellBatch.Run(cases, Times, Options with { Workers = 1 });
        foreach (var workers in new[] { 2, 5 })
        {
            Compare(one, DwellBatch.Run(cases, Times, Options with { Workers = workers }), (_, _, _) => 0);
        }
    }

    [Fact]
    public void A_dwell_that_fails_is_named_and_costs_the_others_nothing()
    {
        // Lymph of a litre a minute empties the cavity; an hour does not last to the last sample. Their neighbors are simulated alone
        // and agree with the batch without the two within the tolerance of 1e-8 (20 of them, as above).
        var cases = Mixed();
        var healthy = DwellBatch.Run(cases, Times, Options);
        var empty = Ensemble[0] with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(1000) };
        cases[5] = new(Person, empty, DwellOf(1));
        cases[77] = new(Person, Ensemble, 77, DwellOf(77) with { Duration = TimeSpan.FromHours(1) });
        var found = DwellBatch.Run(cases, Times, Options);
        Assert.Equal([5, 77], found.Failures.Select(failure => failure.Index));
        Assert.Equal(["dwell-not-integrated", "dwell-not-possible"], found.Failures.Select(failure => failure.Finding.Code));
        Assert.Equal(0, found.VolumesMilliliters(1)[5]);
        Compare(healthy, found, (expected, dwell, size) => dwell is 5 or 77 ? double.PositiveInfinity : 2e-7 * (Math.Abs(expected) + size));
    }

    [Fact]
    public void A_batch_can_be_watched_and_stopped()
    {
        using var stop = new CancellationTokenSource();
        var seen = new List<double>();
        var listener = new Listener(share =>
        {
            seen.Add(share);
            stop.Cancel();
        });
        var control = new RunControl { Cancellation = stop.Token, Progress = listener };
        var cases = Enumerable.Range(0, 20_000).Select(i => Case(i % Ensemble.Count)).ToArray();
        Assert.ThrowsAny<OperationCanceledException>(() => DwellBatch.Run(cases, Times, Options, control));
        Assert.InRange(seen[0], 0.009, 0.5);
    }

    [Fact]
    public void Nothing_is_allocated_for_a_dwell()
    {
        // Ten times the dwells, the same memory: the workspace of a run and nothing else. A kilobyte for what the runtime does meanwhile.
        var options = Options with { Workers = 1 };
        var (few, many) = (Enumerable.Range(0, 1000).Select(i => Case(i % Ensemble.Count)).ToArray(), Enumerable.Range(0, 10_000).Select(i => Case(i % Ensemble.Count)).ToArray());
        var (intoFew, intoMany) = (new DwellSamples(options.Panel, Times, few.Length), new DwellSamples(options.Panel, Times, many.Length));
        Assert.Equal(Allocated(few, intoFew), Allocated(many, intoMany), 1024.0);

        double Allocated(DwellCase[] cases, DwellSamples into)
        {
            var least = long.MaxValue;
            for (var i = 0; i < 3; i++)
            {
                var before = GC.GetAllocatedBytesForCurrentThread();
                DwellBatch.Run(cases, into, options);
                least = Math.Min(least, GC.GetAllocatedBytesForCurrentThread() - before);
            }

            return least;
        }
    }

    [Fact]
    public void What_does_not_fit_is_refused()
    {
        Assert.Throws<ArgumentException>(() => DwellBatch.Run([Case(0)], [Times[1], Times[0]], Options));
        Assert.Throws<ArgumentException>(() => DwellBatch.Run([Case(0)], [], Options));
        Assert.Throws<ArgumentOutOfRangeException>(() => DwellBatch.Run([], Times, Options));
        Assert.Throws<ArgumentException>(() => DwellBatch.Run([Case(0)], new DwellSamples(SolutePanel.Small, Times, 1), Options));
        Assert.Throws<ArgumentOutOfRangeException>(() => new DwellCase(Person, Ensemble, Ensemble.Count, DwellOf(0)));
    }

    private static Dwell DwellOf(int i) => new(
        DialysisSolution.UsualGlucose[i % 3],
        Volume.FromMilliliters(1500 + 100 * (i % 10)),
        TimeSpan.FromHours(4 + i % 5),
        ResidualFluid.Used(Volume.FromMilliliters(200 + i), Person.Plasma));

    private static DwellCase Case(int i) => new(Person, Ensemble, i, DwellOf(i));

    private static DwellCase[] Mixed()
    {
        var other = Patient.Example with { Plasma = new(Concentration.FromMillimolesPerLiter(28), Concentration.FromMicromolesPerLiter(950), Concentration.FromMillimolesPerLiter(11), Concentration.FromMillimolesPerLiter(134)) };
        return
        [
            .. Enumerable.Range(0, 150).Select(i => (i % 7) switch
            {
                1 => new DwellCase(other, Ensemble[i] with { Pores = new(45, 240, 0.03, 0.07) }, DwellOf(i)),
                2 => new DwellCase(other, Ensemble[i] with { AreaLaw = AreaLaw.Exponential, VolumePerPressure = null }, DwellOf(i)),
                3 => new DwellCase(Person, Ensemble[i].ScaledTo(Area.FromSquareMeters(1.2)), DwellOf(i)),
                _ => Case(i),
            }),
        ];
    }

    private static DwellSamples Sampled<T>(DwellCase[] cases, double tolerance = 1e-8)
        where T : struct, ILane<T>
    {
        var samples = new DwellSamples(Options.Panel, Times, cases.Length);
        DwellBatch.Run<T>(cases, samples, Options with { Integration = new() { RelativeTolerance = tolerance } }, null);
        return samples;
    }

    private static void Compare(DwellSamples expected, DwellSamples found, Func<double, int, double, double> allowed)
    {
        for (var k = 0; k < Times.Length; k++)
        {
            Columns(expected.VolumesMilliliters(k), found.VolumesMilliliters(k));
            Columns(expected.UltrasmallPoreMilliliters(k), found.UltrasmallPoreMilliliters(k));
            Columns(expected.SmallPoreMilliliters(k), found.SmallPoreMilliliters(k));
            Columns(expected.LargePoreMilliliters(k), found.LargePoreMilliliters(k));
            foreach (var solute in Options.Panel.Solutes)
            {
                Columns(expected.ConcentrationsMillimolesPerLiter(solute, k), found.ConcentrationsMillimolesPerLiter(solute, k));
            }
        }

        void Columns(ReadOnlySpan<double> left, ReadOnlySpan<double> right)
        {
            var size = 0.0;
            foreach (var number in left)
            {
                size = Math.Max(size, 1e-3 * Math.Abs(number));
            }

            for (var i = 0; i < left.Length; i++)
            {
                Assert.True(Math.Abs(left[i] - right[i]) <= allowed(left[i], i, size), $"dwell {i}: {left[i]:R} {right[i]:R}");
            }
        }
    }

    private sealed class Listener(Action<double> heard) : IProgress<double>
    {
        public void Report(double value) => heard(value);
    }
}
