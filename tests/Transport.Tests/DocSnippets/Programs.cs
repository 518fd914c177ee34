using Transport.Reporting;

namespace Transport.Tests.DocSnippets;

/// <summary>Every piece of C# that the documentation shows, as it stands there: a region each. Paths are those of the repository.</summary>
internal static class Programs
{
    public static void Readme()
    {
        #region README.md
        var test = SampleSheet.Read("reference-data/examples/merrow-01-average.csv").ToTest();
        var indices = EquilibrationIndices.Of(test);
        var fit = MembraneFit.Run(test);
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(200), Volume.FromMilliliters(600)));
        var space = new RegimenSpace { Cycles = [3, 4, 5], VolumesPerCycle = [Volume.FromLiters(2)], NightLengths = [TimeSpan.FromHours(9)] };
        var front = RegimenSearch.Run(test.Patient, MembraneSampling.Run(fit).ToEnsemble(50), goals, space, options: new() { Tested = test.Solution });
        Console.WriteLine($"{indices.DialysateToPlasmaCreatinine}: {indices.Classification?.Category.Name()}");
        Console.WriteLine(fit.Summary);
        foreach (var option in front.Options)
            Console.WriteLine($"{option.Regimen}. {option.SingleDay} Absorbed glucose {option.GlucoseAbsorbed}.");
        #endregion
    }

    public static void Sheet()
    {
        #region sample-sheet.md
        var sheet = SampleSheet.Read("reference-data/examples/merrow-01-average.csv");
        foreach (var finding in sheet.Findings)
        {
            Console.WriteLine(finding);            // file, row, field: what is wrong, what was found, what was expected
        }

        EquilibrationTest test = sheet.ToTest();   // or all the reasons why not, in one SampleSheetException
        #endregion
        Assert.Equal("MV-01", test.Patient.Code);
    }

    public static void GettingStarted()
    {
        #region getting-started.md: sheet and indices
        var sheet = SampleSheet.Read("reference-data/examples/merrow-02-fast.csv");
        foreach (var finding in sheet.Findings)
            Console.WriteLine(finding);

        var test = sheet.ToTest();
        var indices = EquilibrationIndices.Of(test);
        Console.WriteLine(Reports.Of(indices).Text);
        #endregion

        #region getting-started.md: fit
        var fit = MembraneFit.Run(test);
        Console.WriteLine($"{fit.Status}. {fit.Summary}");
        foreach (var parameter in fit.Parameters)
            Console.WriteLine($"{parameter.Name}: {parameter.Low:G3} to {parameter.High:G3} {parameter.Unit} ({parameter.Verdict})");
        #endregion

        #region getting-started.md: curves
        var curves = DwellCurves.Run(test.Patient, MembraneSampling.Run(fit).ToEnsemble(100), new() { Tested = test.Solution });
        Console.WriteLine(Reports.Of(curves).Text);
        Directory.CreateDirectory("out");
        FigureExport.WriteHtml(DwellCharts.Ultrafiltration(curves), "out/ultrafiltration.html");
        #endregion

        #region getting-started.md: night
        var night = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var outcome = RegimenSimulation.Run(test.Patient, fit.Membrane, night);
        Console.WriteLine($"{night}: {outcome.Ultrafiltration} in 24 h, weekly Kt/V {outcome.UreaDose.TotalKtOverV:0.00}");
        foreach (var finding in outcome.Findings)
            Console.WriteLine(finding);
        #endregion
    }

    public static void ChartInOneFile()
    {
        #region notebooks.md
        var sheet = SampleSheet.Read("reference-data/examples/merrow-01-average.csv");
        var results = EquilibrationIndices.Of(sheet.ToTest());
        Console.WriteLine(Reports.Of(results).Text);
        Directory.CreateDirectory("out");
        if (EquilibrationCharts.AgainstPopulation(results) is { } figure)
        {
            FigureExport.WriteHtml(figure, "out/against-population.html");
        }
        #endregion
    }

    public static void FiledReport()
    {
        #region filing-a-report.md
        var sheet = SampleSheet.Read("reference-data/examples/merrow-04-lost-dip.csv");
        var page = ReportPages.Of(sheet, EquilibrationIndices.Of(sheet.ToTest()));
        Directory.CreateDirectory("out");
        File.WriteAllText("out/report.html", page.Html);
        #endregion
    }

    public static void FileBasedApp()
    {
        #region getting-started.md: file-based app
        var patient = Patient.Example;
        var membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(patient.BodySurface);
        var residual = ResidualFluid.Used(Volume.FromMilliliters(250), patient.Plasma);
        foreach (var solution in DialysisSolution.UsualGlucose)
        {
            var dwell = new Dwell(solution, Volume.FromLiters(2), TimeSpan.FromHours(8), residual);
            var course = DwellSimulation.Run(patient, membrane, dwell);
            var (time, most) = course.PeakUltrafiltration();
            Console.WriteLine($"{solution}: most ultrafiltration {most} at {time.TotalMinutes:0} min, {course.GlucoseAbsorbedAt(dwell.Duration)} glucose in 8 h");
        }
        #endregion
    }

    public static void Choices(EquilibrationTest test)
    {
        #region indices.md
        var choices = EquilibrationIndicesOptions.Default with
        {
            Cuts = CategoryCuts.Twardowski1987Creatinine with { IsFastBorderFast = true },
            Population = ReferencePopulations.Italy2019,
        };
        var indices = EquilibrationIndices.Of(test, choices);
        #endregion
        Assert.Equal(ReferencePopulations.Italy2019, indices.Classification!.Population);
    }

    public static void TwoTests(EquilibrationTest first, EquilibrationTest second)
    {
        #region fitting.md
        var joint = MembraneFit.Run([ObservedExchange.From(first), ObservedExchange.From(second)]);
        foreach (var check in joint.Residuals.Where(residual => !residual.Observation.IsFitted))
            Console.WriteLine($"{check.Observation.Quantity} at {check.Observation.Time.TotalMinutes} min: {check.Standardized:0.0} SD from the fit");
        #endregion
    }

    public static void Models(EquilibrationTest test)
    {
        #region estimation.md
        var compared = ModelComparison.Run(
        [
            new("three pores", MembraneFit.Run(test)),
            new("no ultrasmall pores", MembraneFit.Run(test, new() { Prior = PopulationPrior.IncidentAdults().WithoutUltrasmallPores() })),
            new("one barrier", LumpedFit.Run(test)),
        ]);
        Console.WriteLine(compared.Summary);
        foreach (var finding in compared.Findings)
            Console.WriteLine(finding.Message);
        #endregion
    }

    public static void Nights(EquilibrationTest test, RecordBook book)
    {
        #region fitting.md: nights
        var alone = MembraneFit.Run(test);
        var review = RecordReview.Run(test.Patient, MembraneSampling.Run(alone).ToEnsemble(), book, new() { Tested = test.Solution });
        var joint = MembraneFit.Run(test, nights: ObservedNights.From(review));
        foreach (var evidence in joint.NightEvidence)
            Console.WriteLine(evidence.Words);
        var posterior = MembraneSampling.Run(joint);
        #endregion
        Assert.True(posterior.IsConverged);
        Assert.Contains(joint.NightEvidence, evidence => evidence.SpreadLeft < 0.9);
    }

    public static void Search(Patient patient, MembraneEnsemble ensemble, DialysisSolution tested)
    {
        #region regimens.md: search
        var present = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose227);
        var need = FluidTarget.From(
            intake: Volume.FromMilliliters(1500),
            kidneys: patient.ResidualFunction,
            otherLosses: Volume.FromMilliliters(500),
            margin: Volume.FromMilliliters(200));
        var goals = new RegimenGoals(need) { MostStrongestExchanges = 0 };
        var space = new RegimenSpace { Cycles = [4, 5], VolumesPerCycle = [Volume.FromLiters(2)], NightLengths = [present.NightLength] };
        var front = RegimenSearch.Run(patient, ensemble, goals, space, present, new() { Tested = tested });
        foreach (var option in front.Options)
            Console.WriteLine($"{option.Change?.Text}: {option.Ultrafiltration}, {option.SodiumRemoved} sodium. {option.Why}");
        #endregion
        Assert.NotNull(front.Present);
    }

    public static void SearchQuestions()
    {
        #region search.md
        var test = SampleSheet.Read("reference-data/examples/merrow-01-average.csv").ToTest();
        var patient = test.Patient with
        {
            ResidualFunction = new(Clearance.FromMillilitersPerMinute(3), Clearance.FromMillilitersPerMinute(5), Volume.FromMilliliters(800)),
        };
        var ensemble = MembraneSampling.Run(MembraneFit.Run(test)).ToEnsemble(400);
        var present = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose386);
        var options = new RegimenSearchOptions { Tested = test.Solution, EnsembleMembers = 400, MostOptions = 3 };
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(800), Volume.FromMilliliters(1600)))
        {
            LongestNight = TimeSpan.FromHours(9),
            Bounds =
            [
                RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, 800).WithProbability(0.9),
                RegimenBound.AtLeast(RegimenMeasure.UreaDose, 1.7).WithProbability(0.9),
            ],
        };
        var space = RegimenSpace.Usual(patient, goals);

        Console.WriteLine("1. Least glucose that keeps 800 mL and Kt/V 1.7 within nine hours, with a chance of 90 %?");
        var front = RegimenSearch.Run(patient, ensemble, goals, space, present, options);
        Print(front);

        Console.WriteLine("2. The same without the strongest bag?");
        Print(RegimenSearch.Run(patient, ensemble, goals with { MostStrongestExchanges = 0 }, space, present, options));

        Console.WriteLine("3. What if urine goes on falling, the membrane is faster, or two hours of the night are lost?");
        Console.WriteLine(RegimenSensitivity.ReserveOf(front.Options[0], goals).Words);
        foreach (var row in RegimenSensitivity.Run(patient, ensemble, goals, space, front.Options[0].Regimen, options))
            Console.WriteLine(row.Words);

        static void Print(RegimenFront front)
        {
            Console.WriteLine($"{front.CandidateCount} regimens were looked at.");
            if (front.NothingMeets is { } unmet)
                Console.WriteLine($"Nothing meets every goal: {unmet.Goal}. {unmet.ByHowMuch} The nearest:");
            foreach (var option in front.Options)
            {
                Console.WriteLine($"- {option.Regimen}");
                Console.WriteLine($"  {option.SingleDay}");
                foreach (var answer in option.Answers)
                    Console.WriteLine($"  {answer.Words}");
                Console.WriteLine(FormattableString.Invariant($"  Glucose absorbed {option.GlucoseAbsorbed.Median.Grams:0} g. {option.Why}"));
            }
        }
        #endregion
    }

    public static void Strategies(string directory)
    {
        #region strategies.md
        var fluid = FluidTarget.Between(Volume.FromMilliliters(700), Volume.FromMilliliters(1100));
        var limits = new RegimenGoals(fluid) { LongestNight = TimeSpan.FromHours(9) };
        var usual = Regimen.Cycling(TimeSpan.FromHours(9), 5, Volume.FromLiters(2), DialysisSolution.Glucose227);
        var gentle = Regimen.Cycling(TimeSpan.FromHours(9), 4, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var loss = new StrategyLoss(fluid);
        var design = new StrategyStudyDesign
        {
            Population = VirtualPopulation.OfPrior(PopulationPrior.IncidentAdults(), Patient.Example),
            Strategies =
            [
                new FixedStrategy("one for all", usual),
                new CategoryStrategy("one for each class", new Dictionary<TransportCategory, Regimen> { [TransportCategory.Slow] = gentle, [TransportCategory.SlowAverage] = gentle }, usual),
                new LeastLossStrategy("one for each patient", loss),
            ],
            Loss = loss,
            Limits = limits,
            Patients = 8,
            PatientsPerPart = 4,
        };
        var study = StrategyStudy.Run(design, directory);
        foreach (var row in study.Summaries)
            Console.WriteLine($"{row.Strategy}: regret {row.RegretGrams} g, against the first {row.AgainstFirst?.LossGrams} g");
        #endregion
    }

    public static void AnyExchanges(Patient patient, ThreePoreMembrane membrane)
    {
        #region regimens.md: exchanges
        var hands = Regimen.Ambulatory(
        [
            new(new(7, 0), DialysisSolution.Glucose136, Volume.FromLiters(2)),
            new(new(12, 0), DialysisSolution.Glucose136, Volume.FromLiters(2)),
            new(new(17, 0), DialysisSolution.Glucose136, Volume.FromLiters(2)),
            new(new(22, 0), DialysisSolution.Glucose227, Volume.FromLiters(2)),
        ]);
        var tidal = Regimen.Tidal(TimeSpan.FromHours(9), 12, new TidalPlan(Volume.FromLiters(2), 0.5), DialysisSolution.Glucose136);
        var small = new Exchange(DialysisSolution.Glucose227, Volume.FromLiters(1.5), TimeSpan.FromMinutes(45));
        var large = new Exchange(DialysisSolution.Glucose136, Volume.FromLiters(2.5));
        var varied = new Regimen(TimeSpan.FromHours(9), [small, small, large, large], day: [large, large]);
        foreach (var regimen in new[] { hands, tidal, varied })
            Console.WriteLine($"{regimen}: {RegimenSimulation.Run(patient, membrane, regimen).Ultrafiltration}");
        #endregion
    }

    public static void SideBySide(Patient patient, MembraneEnsemble ensemble, DialysisSolution tested)
    {
        #region regimens.md: side by side
        var nine = TimeSpan.FromHours(9);
        var four = Regimen.Cycling(nine, 4, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var six = Regimen.Cycling(nine, 6, Volume.FromLiters(2), DialysisSolution.Glucose136);
        var compared = RegimenComparison.Run(patient, ensemble, four, [("six", six)], new() { Tested = tested });
        foreach (var one in compared.Rows[1].Measures.Where(one => one.Difference is not null))
            Console.WriteLine($"{one.Measure}: {one.Difference} {one.Measure.Unit} more than now");
        foreach (var target in GuidelineTargets.Of(compared.Present))
            Console.WriteLine($"{target.Target}: {target.Text}");
        Console.WriteLine(ResidualFunctionNeeded.Of(compared.Present));
        var longer = WhatIf.Run(patient, ensemble, four, RegimenKnob.NightLength, [8, 9, 10]);
        #endregion
        Assert.Equal(3, longer.Points.Length);
    }

    public static void RegimenFiles()
    {
        #region regimen-files.md
        var file = RegimenFile.Read("reference-data/examples/regimens/cycling.csv");
        foreach (var finding in file.Findings)
            Console.WriteLine(finding);           // file, row, field: what is wrong, what was found, what was expected
        var prescribed = file.ToRegimen();        // or all the reasons why not, in one RegimenException
        var wholeWeek = file.ToWeek();            // six nights of seven
        Console.WriteLine($"{prescribed}\n{wholeWeek}");
        Directory.CreateDirectory("out");
        new RegimenFile([new("", prescribed)], wholeWeek).Write("out/regimen.json");
        #endregion
    }

    public static void Body(Patient patient, ThreePoreMembrane membrane, Regimen present)
    {
        #region regimens.md: body
        var measured = new PlasmaMeasurement(Concentration.FromMillimolesPerLiter(21), new TimeOnly(9, 0));
        var body = new BodyKinetics(SolutePool.Urea with { Measured = measured }, SolutePool.Creatinine);
        var now = RegimenSimulation.Run(patient, membrane, present, RegimenOptions.Default with { Body = body });
        var same = RegimenOptions.Default with { Body = body.WithGenerationOf(now.Plasma!) };
        var five = WeekSimulation.Run(patient, membrane, RegimenWeek.OfNights(present, 5), same);
        Console.WriteLine($"urea {now.Plasma!.MeanOf(Solutes.Urea)} on average, {now.Plasma.LevelAt(Solutes.Urea, new(7, 0))} at 7 o'clock");
        Console.WriteLine($"five nights: weekly Kt/V {five.UreaDose.TotalKtOverV:0.00}, urea {five.Plasma!.MeanOf(Solutes.Urea)} on average");
        #endregion
    }
}
