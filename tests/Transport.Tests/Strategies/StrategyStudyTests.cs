using System.Collections.Immutable;

namespace Transport.Tests.Strategies;

/// <summary>Studies of strategies over virtual patients: parts that survive a kill, pairs within the patient, and no strategy that sees the truth.</summary>
public sealed class StrategyStudyTests : IDisposable
{
    private static readonly FluidTarget Fluid = FluidTarget.Between(Volume.FromMilliliters(700), Volume.FromMilliliters(1_100));
    private static readonly Regimen Usual = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227);
    private static readonly Regimen Gentle = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136);

    // Nine regimens, six patients in parts of two: small, and every way through the program is used.
    private static readonly StrategyStudyDesign Small = new()
    {
        Population = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example),
        Loss = new(Fluid),
        Limits = new(Fluid),
        Space = new()
        {
            NightLengths = [TimeSpan.FromHours(9)],
            Cycles = [4, 5, 6],
            VolumesPerCycle = [Volume.FromLiters(2)],
            StrongerFirstCycles = [0],
        },
        Strategies =
        [
            new FixedStrategy("usual", Usual),
            new CategoryStrategy("by class", new Dictionary<TransportCategory, Regimen> { [TransportCategory.Fast] = Usual }, Gentle),
            new LeastLossStrategy("by fit", new(Fluid)),
        ],
        Patients = 6,
        PatientsPerPart = 2,
        Seed = 5,
    };

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("strategies");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void A_study_that_was_killed_goes_on_and_ends_with_the_same_bytes()
    {
        // Reference: one run without a stop. Expected: equal file names and equal bytes, so that nothing is lost and nothing is there twice.
        var whole = Path.Combine(folder.FullName, "whole");
        var uninterrupted = StrategyStudy.Run(Small, whole);
        Assert.Equal(
            ["manifest.json", "part-00000.parquet", "part-00001.parquet", "part-00002.parquet", "rows.csv", "summary.csv"],
            Files(whole).Keys);

        // Dies in the second part, with the process: no code of the study runs after it.
        var broken = Path.Combine(folder.FullName, "broken");
        Assert.Throws<InsufficientMemoryException>(() => StrategyStudy.Run(DiesAt(3), broken));
        Assert.Equal(["manifest.json", "part-00000.parquet"], Files(broken).Keys);

        // Dies between the renaming of the second part and the manifest, and while the third is written.
        File.WriteAllBytes(Path.Combine(broken, "part-00001.parquet"), Files(whole)["part-00001.parquet"]);
        File.WriteAllText(Path.Combine(broken, "part-00002.parquet.aside"), "half of a fi");
        var resumed = StrategyStudy.Run(Small, broken);
        Same(Files(whole), Files(broken));
        Assert.Equal(uninterrupted.Rows.AsEnumerable(), resumed.Rows.AsEnumerable());

        // A part that somebody damaged is made again, and so is one that is gone.
        File.WriteAllText(Path.Combine(broken, "part-00000.parquet"), "not a table");
        File.Delete(Path.Combine(broken, "part-00002.parquet"));
        StrategyStudy.Run(Small, broken);
        Same(Files(whole), Files(broken));

        // What is in memory is what is in the files.
        Assert.Equal(StrategyStudy.Run(Small with { Workers = 1 }).Rows.AsEnumerable(), resumed.Rows.AsEnumerable());
    }

    [Fact]
    public void A_study_that_is_stopped_in_the_middle_of_a_part_keeps_the_parts_before_and_goes_on()
    {
        var whole = Path.Combine(folder.FullName, "whole");
        StrategyStudy.Run(Small, whole);
        var stopped = Path.Combine(folder.FullName, "stopped");
        using var stop = new CancellationTokenSource();
        List<double> shares = [];
        var progress = new Told(share =>
        {
            shares.Add(share);

            // Three of six: one patient of the second part is done.
            if (share > 0.34)
            {
                stop.Cancel();
            }
        });
        Assert.ThrowsAny<OperationCanceledException>(() => StrategyStudy.Run(Small with { Workers = 1 }, stopped, new() { Cancellation = stop.Token, Progress = progress }));
        Assert.Equal(["manifest.json", "part-00000.parquet"], Files(stopped).Keys);
        Assert.Equal(0.5, shares[^1], 2);

        StrategyStudy.Run(Small, stopped, new() { Progress = progress });
        Same(Files(whole), Files(stopped));
        Assert.Equal(1, shares[^1], 12);
    }

    [Fact]
    public void A_part_is_read_by_a_program_that_has_written_none()
    {
        // The library once more, in a context of its own, as after a restart; it once could read only after it had written.
        var part = StrategyParquet.Write([.. StrategyStudy.Run(Small).Rows]);
        var again = new System.Runtime.Loader.AssemblyLoadContext("after a restart", isCollectible: true);
        try
        {
            var fresh = again.LoadFromAssemblyPath(typeof(StrategyParquet).Assembly.Location).GetType(typeof(StrategyParquet).FullName!)!;
            var rows = (System.Collections.IEnumerable)fresh.GetMethod(nameof(StrategyParquet.Read))!.Invoke(null, [part])!;
            Assert.Equal(18, rows.Cast<object>().Count());
        }
        finally
        {
            again.Unload();
        }
    }

    [Fact]
    public void The_manifest_names_each_part_with_its_patients_and_seeds()
    {
        StrategyStudy.Run(Small, folder.FullName);
        var manifest = StudyManifest.Read(folder.FullName)!;
        Assert.Equal(3, manifest.Parts);
        Assert.Equal([(0, 1), (2, 3), (4, 5)], manifest.Done.Select(part => (part.FirstPatient, part.LastPatient)));
        Assert.All(manifest.Done, part => Assert.Equal((6, Small.Population[5, part.FirstPatient].Seed, Small.Population[5, part.LastPatient].Seed), (part.Rows, part.FirstSeed, part.LastSeed)));

        // The bytes of the file as they are, by the hash of the base library.
        Assert.All(manifest.Done, part => Assert.Equal(
            Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(Path.Combine(folder.FullName, part.File)))), part.Sha256));
    }

    [Fact]
    public void The_folder_of_another_study_is_left_alone()
    {
        StrategyStudy.Run(Small, folder.FullName);
        var before = Files(folder.FullName);
        StrategyStudyDesign[] others =
        [
            Small with { Seed = 6 },
            Small with { Patients = 7 },
            Small with { Loss = new(Fluid) { GramsPerCycle = 3 } },
            Small with { Test = new() { Solution = DialysisSolution.Glucose227 } },
            Small with { Strategies = [Small.Strategies[0], Small.Strategies[1], new LeastLossStrategy("by fit", new(Fluid) { GramsPerLiter = 1 })] },
            Small with { Population = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults() with { DiffusionAreaLogDeviation = 0.3 }, Patient.Example) },
        ];
        foreach (var other in others)
        {
            var refusal = Assert.Throws<InvalidDataException>(() => StrategyStudy.Run(other, folder.FullName));
            Assert.Contains("holds another study; nothing was written", refusal.Message, StringComparison.Ordinal);
        }

        Same(before, Files(folder.FullName));
        File.WriteAllText(Path.Combine(folder.FullName, "manifest.json"), "{ \"design\": [");
        Assert.Throws<InvalidDataException>(() => StrategyStudy.Run(Small, folder.FullName));
    }

    [Fact]
    public void Regret_is_never_negative_within_the_space_and_comes_from_the_errors_of_the_test()
    {
        // Nothing beats the best of the space. A search on a fit that is nearly the truth loses nearly nothing; with the errors of a laboratory it loses more.
        // Errors a tenth of usual leave a fit that the prior hardly moves.
        var usual = AssayErrors.Default;
        var exact = new SimulatedTestOptions
        {
            ResidualLogDeviation = 0,
            Errors = usual with
            {
                CreatinineVariation = usual.CreatinineVariation / 10,
                UreaVariation = usual.UreaVariation / 10,
                GlucoseVariation = usual.GlucoseVariation / 10,
                SodiumVariation = usual.SodiumVariation / 10,
                SamplingVariation = usual.SamplingVariation / 10,
                CreatinineFloor = usual.CreatinineFloor * 0.1,
                UreaFloor = usual.UreaFloor * 0.1,
                GlucoseFloor = usual.GlucoseFloor * 0.1,
                VolumeDeviation = usual.VolumeDeviation * 0.1,
            },
        };
        var design = Small with { Patients = 24 };
        var noisy = StrategyStudy.Run(design);
        var quiet = StrategyStudy.Run(design with { Test = exact });
        Assert.All(noisy.Rows, row => Assert.True(row.RegretGrams >= 0));
        Assert.InRange(Regret(quiet), 0, Regret(noisy));
        Assert.True(Regret(noisy) > 0);
        Assert.True(Regret(noisy) < noisy.Summaries[0].RegretGrams.Mean);

        static double Regret(StrategyStudyResult result) => result.Summaries[^1].RegretGrams.Mean;
    }

    [Fact]
    public void Differences_are_taken_within_the_patient()
    {
        var result = StrategyStudy.Run(Small);
        var (first, last) = (result.Of("usual"), result.Of("by fit"));
        var difference = result.Difference("by fit", "usual");
        Assert.Equal(first.Zip(last, (one, other) => other.GlucoseAbsorbedGrams - one.GlucoseAbsorbedGrams).Average(), difference.GlucoseAbsorbedGrams.Mean, 9);
        Assert.Equal(difference, result.Summaries[2].AgainstFirst);
        Assert.Null(result.Summaries[0].AgainstFirst);

        // A regimen less itself: nothing in any patient, so an interval without width, which unpaired would be as wide as people differ.
        var same = StrategyStudy.Run(Small with { Strategies = [new FixedStrategy("a", Usual), new FixedStrategy("b", Usual)] }).Difference("b", "a");
        Assert.Equal(new(0, 0, 0), same.UltrafiltrationMilliliters);
        Assert.Throws<ArgumentException>(() => result.Difference("by fit", "nobody's"));
    }

    [Fact]
    public void The_interval_of_ten_differences_is_students_own()
    {
        // Student, Biometrika 1908;6:1, table of hours of sleep gained, ten patients, one drug less the other: mean 1.58. 95 % interval 0.7001142 to
        // 2.4598858 as statistical software prints it for this table (memory); by hand with t = 2.262157 and s = 1.229995: 1.58 ± 0.879886.
        var interval = MeanInterval.Of([1.2, 2.4, 1.3, 1.3, 0.0, 1.0, 1.8, 0.8, 4.6, 1.4]);
        Assert.Equal(1.58, interval.Mean, 12);
        Assert.Equal(0.7001142, interval.Low, 6);
        Assert.Equal(2.4598858, interval.High, 6);
        Assert.Throws<ArgumentException>(() => MeanInterval.Of([1.0]));
    }

    [Fact]
    public void A_search_for_each_patient_sees_the_fit_and_not_the_truth()
    {
        // The search is given the fit's ensemble: choosing by hand from the same test and fit comes to the same regimen.
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(300), Volume.FromMilliliters(1_500))) { Clearance = null };
        var options = new RegimenSearchOptions { EnsembleMembers = 20 };
        var strategy = new SearchStrategy("search", goals, Gentle, options);
        var design = Small with { Patients = 3, Strategies = [strategy] };
        var rows = StrategyStudy.Run(design).Rows;
        for (var i = 0; i < rows.Length; i++)
        {
            var truth = design.Population[design.Seed, i];
            var test = SimulatedTest.Run(truth.Patient, truth.Membrane, truth.Seed);
            var fit = MembraneFit.Run(test);
            var front = RegimenSearch.Run(truth.Patient, fit.ToEnsemble(20), goals, Small.Space!, options: options with { Tested = test.Solution, MostOptions = 1 });
            Assert.Equal(front.NothingMeets is null ? front.Options[0].Regimen.Describe() : Gentle.Describe(), rows[i].Regimen);
            Assert.NotEqual(rows[i].DiffusionAreaCentimeters, rows[i].FittedDiffusionAreaCentimeters);
        }
    }

    [Fact]
    public void Rules_are_learnt_on_others()
    {
        // With one patient to learn from, the rule for all is what is best for him, and his class has the same.
        var design = Small with { Patients = 2, Population = VirtualPopulation.OfCohort(FitCohort.Parse("diffusion_area_cm,ultrafiltration_coefficient_mL_per_min_per_mmHg\n24000,0.06\n24000,0.06\n", "two.csv")) };
        var (overall, byCategory) = StrategyTraining.Run(design, "all", "class");
        var rows = StrategyStudy.Run(design with { Strategies = [overall, byCategory] }).Rows;
        Assert.All(rows, row => Assert.Equal(0, row.RegretGrams, 9));
        Assert.Equal(overall.Regimen, byCategory.Otherwise);
        Assert.All(byCategory.Regimens.Values, regimen => Assert.Equal(overall.Regimen, regimen));
    }

    private static StrategyStudyDesign DiesAt(int patient) => Small with { Strategies = [new Dying(Small.Strategies[0], patient), .. Small.Strategies.Skip(1)], Workers = 1 };

    private static ImmutableSortedDictionary<string, byte[]> Files(string directory) => Directory.EnumerateFiles(directory)
        .ToImmutableSortedDictionary(path => Path.GetFileName(path), File.ReadAllBytes, StringComparer.Ordinal);

    private static void Same(ImmutableSortedDictionary<string, byte[]> expected, ImmutableSortedDictionary<string, byte[]> found)
    {
        Assert.Equal(expected.Keys, found.Keys);
        Assert.All(expected, file => Assert.Equal(file.Value, found[file.Key]));
    }

    private sealed class Told(Action<double> told) : IProgress<double>
    {
        public void Report(double value) => told(value);
    }

    private sealed class Dying(IDwellStrategy strategy, int at) : IDwellStrategy
    {
        public string Name => strategy.Name;

        public string Description => strategy.Description;

        public Regimen Choose(TestedPatient patient, RunControl control) => patient.Number == at ? throw new InsufficientMemoryException() : strategy.Choose(patient, control);
    }
}
