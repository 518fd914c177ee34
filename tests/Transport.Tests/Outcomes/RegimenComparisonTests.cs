using static Transport.Analysis.OutcomeMeasures;
using static Transport.Tests.Regimens.RegimenTests;

namespace Transport.Tests.Outcomes;

/// <summary>Every figure of a regimen with its band; regimens side by side, targets, and one knob at a time.</summary>
public sealed class RegimenComparisonTests
{
    // 55 years, 168 cm, 66 kg, some urine: invented.
    private static readonly Patient Somebody = Patient.Example with
    {
        ResidualFunction = new(Clearance.FromMillilitersPerMinute(1.5), Clearance.FromMillilitersPerMinute(3.5), Milliliters(600)),
        Plasma = PlasmaComposition.Typical with
        {
            Others = PlasmaComposition.Typical.Others
                .Add(Solutes.Phosphate, Concentration.FromMillimolesPerLiter(1.8))
                .Add(Solutes.Potassium, Concentration.FromMillimolesPerLiter(4.5)),
        },
    };

    private static readonly ThreePoreMembrane Membrane = ReferenceMembranes.MeanIncidentAdult().ScaledTo(Patient.Example.BodySurface);

    // Forty membranes that differ by some tenths in area and conductance.
    private static readonly MembraneEnsemble Ensemble = new(
        EnsembleSource.Prior,
        1,
        Membrane,
        [.. Enumerable.Range(0, 40).Select(i => Membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury * (1 + 0.2 * Math.Sin(1.7 * i)))],
        [.. Enumerable.Range(0, 40).Select(i => Membrane.DiffusionArea.Centimeters * (1 + 0.25 * Math.Cos(2.3 * i)))],
        [.. Enumerable.Repeat(Membrane.GlucosePermeabilityScale, 40)]);

    private static readonly OutlookOptions Plain = new()
    {
        Layers = DoubtLayers.ParametersAlone,
        PlasmaAlbuminGramsPerLiter = 36,
        PlasmaProteinGramsPerLiter = 66,
        PlasmaAminoAcidsGramsPerLiter = 0.3,
    };

    private static readonly Lazy<RegimenOutlook> Point = new(() => RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), Night(5, Day(2_000)), Plain));

    [Fact]
    public void Every_figure_is_that_of_the_day_it_is_taken_from()
    {
        // A membrane without doubt: bands are points. The right side is the outcome's own arithmetic; 1e-9 relative.
        var outlook = Point.Value;
        var outcome = outlook.Outcome;
        Equal(outcome.Ultrafiltration.Milliliters, Ultrafiltration);
        Equal(outcome.NightUltrafiltration.Milliliters, NightUltrafiltration);
        Equal(outcome.DayUltrafiltration.Milliliters, DayUltrafiltration);
        Equal(outcome.Cycles.Average(cycle => cycle.Ultrafiltration.Milliliters), CycleUltrafiltration);
        Equal(outcome.Ultrafiltration.Milliliters + 600, FluidRemoval);
        Equal(outcome.UreaDose.TotalKtOverV, KtOverV);
        Equal(outcome.UreaDose.PeritonealKtOverV, PeritonealKtOverV);
        Equal(1.5 * 10.08 / 38.5294, RenalKtOverV, 1e-5);
        Equal(outcome.CreatinineDose.Total.LitersPerWeek, CreatinineClearance);
        Equal(2.5 * 10.08 * 1.73 / Somebody.BodySurface.SquareMeters, RenalCreatinineClearance);
        Equal(outcome.RemovalOf(Solutes.Beta2Microglobulin).Clearance!.Value.LitersPerWeek, Beta2Clearance);
        Equal(outcome.RemovalOf(Solutes.Phosphate).Removed!.Value.Millimoles, PhosphateRemoved);
        Equal(1.8 * outlook[PhosphateClearance].Value!.Value.Median / 7, PhosphateRemoved);
        Equal(outcome.RemovalOf(Solutes.Potassium).Removed!.Value.Millimoles, PotassiumRemoved);
        Equal(outcome.GlucoseAbsorbed.Grams, GlucoseAbsorbed);
        Equal(3.75 * outcome.GlucoseAbsorbed.Grams, EnergyAbsorbed);
        Equal(100 * 3.75 * outcome.GlucoseAbsorbed.Grams / (30 * 70), EnergyShare);
        Equal(36 * outcome.RemovalOf(Solutes.Albumin).Clearance!.Value.LitersPerDay, AlbuminLoss);
        Equal(outcome.Peak.Volume.Milliliters, LargestVolume);
        Equal(12, FluidUsed);

        // 9 h, then 10 min for the day's fill and its drain of about 12 min; 10 L are two bags of 5 L, and one of 2 L.
        Equal(9 + (10 + outcome.DayExchanges[0].DrainTime.TotalMinutes) / 60, TimeConnected);
        Equal(3, BagCount);
        Equal(0, StrongestExchanges);

        void Equal(double expected, OutcomeMeasure measure, double tolerance = 1e-9)
        {
            var band = outlook[measure].Value!.Value;
            Assert.Equal(expected, band.Median, tolerance * Math.Max(1, Math.Abs(expected)));
        }
    }

    [Fact]
    public void What_was_not_measured_has_no_figure()
    {
        // Sodium per litre neither: without a test some draws remove less than 100 mL.
        var outlook = RegimenComparison.Run(Patient.Example, MembraneEnsemble.Of(Membrane), Night(4), OutlookOptions.Default);
        Assert.Equal(
            [SodiumPerLiter, PhosphateClearance, PhosphateRemoved, PotassiumRemoved, AlbuminLoss, ProteinLoss, AminoAcidLoss],
            outlook.Measures.Where(one => one.Value is null).Select(one => one.Measure));
        Assert.All(outlook.Measures, one => Assert.Null(one.Difference));
        Assert.Equal(OutcomeMeasures.All.Count, outlook.Measures.Select(one => one.Measure.Name).Distinct().Count());
        Assert.All(OutcomeMeasures.All, measure => Assert.True(measure.Formula.Length > 0 && measure.Source.Length > 0));
    }

    [Fact]
    public void The_page_lists_every_figure_with_its_formula()
    {
        var page = DocSnippets.Documentation.Read("docs/concepts/regimens.md");
        Assert.All(OutcomeMeasures.All, measure => Assert.Contains($"| {measure.Name} | {measure.Unit} | {measure.Formula} | {measure.Source} |", page, StringComparison.Ordinal));
    }

    [Fact]
    public void Protein_lost_is_of_the_published_order_and_below_it()
    {
        // Published: 4.0 ± 2.0 to 10.5 g a day by hand (read). The model's large pores give some 4 g with plasma albumin 36 and protein 66 g/L, four exchanges of 2 L:
        // the low end.
        var hands = Regimen.Ambulatory(new[] { 7, 12, 17, 22 }.Select(hour => new HandExchange(new(hour, 0), DialysisSolution.Glucose136, Milliliters(2_000))));
        var outlook = RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), hands, Plain);
        Assert.InRange(outlook[ProteinLoss].Value!.Value.Median, 2.5, 10.5);
        Assert.InRange(outlook[AlbuminLoss].Value!.Value.Median, 0.5 * outlook[ProteinLoss].Value!.Value.Median, outlook[ProteinLoss].Value!.Value.Median);

        // By hand nobody is connected but to fill and drain: 4 × (10 + about 12 min).
        Assert.Equal(4 * 22 / 60.0, outlook[TimeConnected].Value!.Value.Median, 0.1);
    }

    [Fact]
    public void Sodium_has_the_wide_band_of_its_calibration_and_pressure_that_of_people()
    {
        // Of a point ensemble the band is the factor's: 0.3 to 1.0 around 0.548 of the model; the draws' grid leaves 3 %.
        var outlook = RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), Night(6), Plain);
        var (sodium, model) = (outlook[SodiumRemoved].Value!.Value, outlook[SodiumRemovedByModel].Value!.Value.Median);
        Assert.Equal(Math.Sqrt(0.3) * model, sodium.Median, 0.03 * model);
        Assert.Equal(0.3 * model, sodium.Low, 0.03 * model);
        Assert.Equal(1.0 * model, sodium.High, 0.05 * model);
        Assert.Equal(Doubt.Parameters | Doubt.ModelForm, sodium.Doubt);

        // 13.5 at 2 L, 2.0 a litre; ± 1.645 × 3.3 between people. Measured, it is this person's.
        var pressure = outlook[LargestPressure].Value!.Value;
        var expected = 13.5 + 2.0 * (outlook.Outcome.Peak.Volume.Liters - 2);
        Assert.Equal(expected, pressure.Median, 0.15);
        Assert.Equal(2 * 1.645 * 3.3, pressure.High - pressure.Low, 0.4);
        var own = new CavityPressure(Pressure.FromCentimetersOfWater(15.9), Milliliters(2_000));
        var measured = RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), Night(6), Plain with { Pressure = own });
        var band = measured[LargestPressure].Value!.Value;
        Assert.Equal(band.Low, band.High, 1e-9);
        Assert.InRange(band.Median, 16, 18);
        Assert.Contains("at or above 16", Assert.Single(measured.Findings, finding => finding.Code == "pressure-high").Message, StringComparison.Ordinal);
        Assert.DoesNotContain(outlook.Findings, finding => finding.Code == "pressure-high");
    }

    [Fact]
    public void Body_water_is_by_the_formula_that_is_asked_for()
    {
        // Worked cases: 38.5294 L by Watson and 39.876 L by Hume and Weyers for the same man; a boy and a girl of 120 cm and 22 kg 13.0773 and 13.9748 L by
        // Morgenstern (computed from coefficients that were read). The wrong 0.010 for boys would give less than nothing.
        var one = RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), Night(4), Plain)[KtOverV].Value!.Value.Median;
        var other = RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), Night(4), Plain with { BodyWater = BodyWaterFormula.HumeWeyers })[KtOverV].Value!.Value.Median;
        Assert.Equal(38.5294 / 39.876, other / one, 1e-4);
        var child = Patient.Example with { Height = Length.FromCentimeters(120), Weight = Mass.FromKilograms(22) };
        Assert.Equal(13.0773, BodySize.Water(BodyWaterFormula.Morgenstern, child).Liters, 5e-5);
        Assert.Equal(13.9748, BodySize.Water(BodyWaterFormula.Morgenstern, child with { Sex = Sex.Female }).Liters, 5e-5);
        Assert.Throws<ArgumentOutOfRangeException>(() => BodySize.Water((BodyWaterFormula)7, child));

        // The page says whose it is.
        string Said(Patient patient, OutlookOptions options) => Transport.Reporting.RegimenReports.Of(RegimenComparison.Run(patient, MembraneEnsemble.Of(Membrane), Night(4), options)).Html;
        Assert.Contains("Body water in Kt/V is by Watson.", Said(Somebody, Plain), StringComparison.Ordinal);
        Assert.Contains("Body water in Kt/V is by Hume and Weyers.", Said(Somebody, Plain with { BodyWater = BodyWaterFormula.HumeWeyers }), StringComparison.Ordinal);
        Assert.Contains("Body water in Kt/V is by Morgenstern 2006, of children on peritoneal dialysis.", Said(Somebody with { AgeYears = 16 }, Plain), StringComparison.Ordinal);
    }

    [Fact]
    public void Differences_pair_and_common_doubt_cancels()
    {
        var comparison = RegimenComparison.Run(
            Somebody, Ensemble, Night(5, Day(2_000)), [("same", Night(5, Day(2_000))), ("six", Night(6, Day(2_000))), ("dry", Night(5))], OutlookOptions.Default with { Tested = DialysisSolution.Glucose227 });
        Assert.Equal(["now", "same", "six", "dry"], comparison.Rows.Select(row => row.Name));
        Assert.Equal("as now", comparison.Rows[1].Change!.Text);
        Assert.Equal("one cycle more", comparison.Rows[2].Change!.Text);
        Assert.Null(comparison.Present.Change);
        foreach (var measure in OutcomeMeasures.All)
        {
            var same = comparison.Rows[1][measure].Difference;
            Assert.True(same is null || (same.Value.Low == 0 && same.Value.High == 0), measure.Name);
        }

        // One more cycle of the same strength: the doubt about membrane and model is common, so the difference is known three times better than
        // either figure (computed: more than ten times).
        var six = comparison.Rows[2];
        foreach (var measure in new[] { KtOverV, CreatinineClearance, Ultrafiltration, SodiumRemoved })
        {
            var (difference, value) = (six[measure].Difference!.Value, six[measure].Value!.Value);
            Assert.True(difference.High - difference.Low < (value.High - value.Low) / 3, measure.Name);
        }

        Assert.True(six[KtOverV].Difference!.Value.Low > 0);
        Assert.Equal(3, six[BagCount].Value!.Value.Median);
        Assert.True(comparison.Rows[3][KtOverV].Difference!.Value.High < 0);
        Assert.Throws<ArgumentException>(() => RegimenComparison.Run(Somebody, Ensemble, Night(5), [("now", Night(6))]));
        Assert.Throws<RegimenException>(() => RegimenComparison.Run(Somebody, Ensemble, Night(5), [("too many", Night(5) with { NightLength = TimeSpan.FromHours(1) })]));
    }

    [Fact]
    public void Ultrafiltration_is_moved_by_what_the_model_misses_at_strengths_that_were_not_tested()
    {
        // After a test at 2.27 % a night of 1.36 % is moved by 25 mL for every 4 h of dwell (reference-data/model-discrepancy), five dwells of
        // 78 min by 25 × 5 × 78/240 = 40.6; one at 2.27 % is not moved, and is unsure only in so far as a night of cycles is no test: 50 mL at 4 h.
        double Moved(DialysisSolution solution) => Seen(solution, DoubtLayers.Default).Moved;

        (double Moved, Band<double> Band, double Shares) Seen(DialysisSolution solution, DoubtLayers layers)
        {
            var regimen = Regimen.Cycling(TimeSpan.FromHours(9), 5, Milliliters(2_000), solution);
            var outlook = RegimenComparison.Run(Somebody, MembraneEnsemble.Of(Membrane), regimen, OutlookOptions.Default with { Tested = DialysisSolution.Glucose227, Layers = layers });
            var band = outlook[Ultrafiltration].Value!.Value;
            return (band.Median - outlook.Outcome.Ultrafiltration.Milliliters, band, outlook.Outcome.Cycles.Sum(cycle => cycle.DwellTime.TotalHours / 4));
        }

        Assert.Equal(40.6, Moved(DialysisSolution.Glucose136), 15.0);
        var table = ModelDiscrepancies.MeanIncidentAdult with { DeviationOfCycles = default };
        Assert.Equal(0, Seen(DialysisSolution.Glucose227, new() { ModelForm = table }).Moved, 1e-9);
        var (_, band, shares) = Seen(DialysisSolution.Glucose227, DoubtLayers.Default);
        Assert.Equal(2 * 1.645 * 50 * shares, band.High - band.Low, 0.03 * 290);
    }

    [Fact]
    public void Targets_are_those_of_their_table()
    {
        var rows = ReferenceData.Rows("regimen-targets").ToDictionary(row => row["item"]);
        Assert.All(GuidelineTargets.All, target =>
        {
            Assert.Equal(rows[target.Code].Number("value"), target.Least, 1e-12);
            Assert.Equal(rows[target.Code]["mark"], target.Evidence.ToString(), ignoreCase: true);
            Assert.Contains(target.Measure.Unit.Split('/')[0].Split(' ')[^1], rows[target.Code]["unit"], StringComparison.Ordinal);
        });
        Assert.Equal(PressureRisk.Caution.CentimetersOfWater, rows["pressure_caution"].Number("value"), 1e-9);
        Assert.Equal(PressureRisk.Limit.CentimetersOfWater, rows["pressure_limit"].Number("value"), 1e-9);
        Assert.Equal(new RegimenGoals(FluidTarget.Between(Milliliters(200), Milliliters(500))).LargestFillPerSquareMeter, rows["child_fill_most"].Number("value"), 1e-9);
    }

    [Fact]
    public void A_target_is_met_not_met_or_not_for_this_patient_and_always_with_its_number()
    {
        var anuric = RegimenComparison.Run(Patient.Example, Ensemble, Night(4), OutlookOptions.Default);
        var assessed = GuidelineTargets.Of(anuric).ToDictionary(one => one.Target.Code);
        var ispd = assessed["total_ktv_ispd_2020"];
        Assert.Equal(Assessment.NotMet, ispd.Assessment);
        Assert.True(ispd.Gap < -0.1);
        Assert.False(ispd.IsWithinNoise);
        Assert.Contains("Symptoms, volume and nutrition are not assessed here", ispd.Text, StringComparison.Ordinal);
        Assert.Contains("4.4 %", ispd.Text, StringComparison.Ordinal);

        // With 600 mL of urine the lines of anuric patients say nothing.
        var urine = GuidelineTargets.Of(Point.Value).ToDictionary(one => one.Target.Code);
        Assert.Equal(Assessment.NotAssessable, urine["total_ktv_ispd_2020"].Assessment);
        Assert.Equal(Assessment.NotAssessable, urine["ultrafiltration_eapos_2003"].Assessment);
        Assert.Null(urine["ultrafiltration_eapos_2003"].Gap);
        Assert.Contains("600 mL", urine["ultrafiltration_europe_2005"].Text, StringComparison.Ordinal);
        Assert.NotEqual(Assessment.NotAssessable, urine["total_ktv_kdoqi_2006"].Assessment);

        // Just at the line one measured day decides nothing.
        var value = Point.Value[KtOverV].Value!.Value.Median;
        var near = TargetAssessment.Of(Point.Value, GuidelineTargets.Kdoqi2006 with { Least = value * 0.98 });
        Assert.Equal((Assessment.Met, true), (near.Assessment, near.IsWithinNoise));
        Assert.Contains("more than the gap", near.Text, StringComparison.Ordinal);
        var hands = RegimenComparison.Run(
            Patient.Example, Ensemble, Regimen.Ambulatory([new(new(8, 0), DialysisSolution.Glucose136, Milliliters(2_000)), new(new(20, 0), DialysisSolution.Glucose136, Milliliters(2_000))]));
        Assert.Equal(Assessment.NotAssessable, TargetAssessment.Of(hands, GuidelineTargets.Eapos).Assessment);
    }

    [Fact]
    public void Where_residual_function_ends_to_be_enough_the_goal_is_just_met()
    {
        var needed = ResidualFunctionNeeded.Of(Point.Value, 1.7, Milliliters(800));
        Assert.True(needed.RenalUreaClearance > default(Clearance));

        // The same patient with just that function has a Kt/V of 1.7, by simulation.
        var just = Somebody with { ResidualFunction = new(needed.RenalUreaClearance, needed.RenalUreaClearance, needed.Urine) };
        Assert.Equal(1.7, RegimenComparison.Run(just, MembraneEnsemble.Of(Membrane), Night(5, Day(2_000)), Plain)[KtOverV].Value!.Value.Median, 1e-6);
        Assert.Equal(Math.Max(0, 800 - Point.Value.Outcome.Ultrafiltration.Milliliters), needed.Urine.Milliliters, 1e-6);

        // Creatinine 3.5 for urea 1.5 mL/min now: the mean is 5/3 of urea's.
        Assert.Equal(needed.RenalUreaClearance.MillilitersPerMinute * 5 / 3, needed.FiltrationRate.MillilitersPerMinute, 1e-9);

        // Lost in a straight line: (2.5 − needed)/0.1 months of 30 days.
        var easy = ResidualFunctionNeeded.Of(Point.Value, Point.Value[KtOverV].Value!.Value.Median - 0.1);
        var until = easy.LastsUntil(new(new(2026, 1, 1), Clearance.FromMillilitersPerMinute(0.1)));
        Assert.Equal(new DateOnly(2026, 1, 1).AddDays((int)(30 * (2.5 - easy.FiltrationRate.MillilitersPerMinute) / 0.1)), until);
        Assert.Null(easy.LastsUntil(new(new(2026, 1, 1), default)));
        Assert.Null(ResidualFunctionNeeded.Of(Point.Value, 9).LastsUntil(new(new(2026, 1, 1), Clearance.FromMillilitersPerMinute(0.1))));
        Assert.Equal(default, ResidualFunctionNeeded.Of(Point.Value, 0.5).RenalUreaClearance);
        Assert.Throws<ArgumentOutOfRangeException>(() => ResidualFunctionNeeded.Of(Point.Value, -1));
    }

    [Fact]
    public void Every_knob_turns_and_where_it_stands_now_nothing_changes()
    {
        var regimen = Night(5, Day(2_000), RegimenSettings.Default with { Residual = Milliliters(250) });
        var now = new Dictionary<RegimenKnob, double>
        {
            [RegimenKnob.NightLength] = 9,
            [RegimenKnob.Dwell] = regimen.DwellTimes[0].TotalMinutes,
            [RegimenKnob.VolumePerCycle] = 2_000,
            [RegimenKnob.NightGlucose] = 75.5,
            [RegimenKnob.Cycles] = 5,
            [RegimenKnob.Residual] = 250,
            [RegimenKnob.PlasmaGlucose] = 6,
            [RegimenKnob.LostDwell] = 0,
        };
        Assert.Equal(RegimenKnob.All, now.Keys);
        var point = MembraneEnsemble.Of(Membrane);
        foreach (var (knob, value) in now)
        {
            var turned = WhatIf.Run(Somebody, point, regimen, knob, [value, knob == RegimenKnob.LostDwell ? 60 : 1.2 * value], Plain);
            Assert.Equal(0, turned.Points[0].Outlook![KtOverV].Difference!.Value.Median, 1e-6);
            Assert.NotEqual(0, turned.Points[1].Outlook![Ultrafiltration].Difference!.Value.Median);
        }
    }

    [Fact]
    public void A_knob_moves_what_it_should()
    {
        var point = MembraneEnsemble.Of(Membrane);
        double[] Of(RegimenKnob knob, OutcomeMeasure measure, params double[] values) =>
            [.. WhatIf.Run(Somebody, point, Night(5), knob, values, Plain).Points.Select(one => one.Outlook![measure].Value!.Value.Median)];
        Assert.Equal(Of(RegimenKnob.PlasmaGlucose, Ultrafiltration, 4, 8, 16, 24).OrderDescending(), Of(RegimenKnob.PlasmaGlucose, Ultrafiltration, 4, 8, 16, 24));
        Assert.Equal(Of(RegimenKnob.NightGlucose, Ultrafiltration, 60, 90, 120, 200).Order(), Of(RegimenKnob.NightGlucose, Ultrafiltration, 60, 90, 120, 200));
        Assert.Equal(Of(RegimenKnob.LostDwell, KtOverV, 0, 60, 120, 180).OrderDescending(), Of(RegimenKnob.LostDwell, KtOverV, 0, 60, 120, 180));
        Assert.Equal([5.0, 6, 7], Of(RegimenKnob.Cycles, FluidUsed, 5, 6, 7).Select(liters => liters / 2));

        // Plasma glucose 6 to 20 mmol/L, one dwell of 4 h at 2.27 %: 244 to 162 mL (computed for the clinical review); here a single dwell as a night.
        var one = Regimen.Cycling(TimeSpan.FromMinutes(240 + 10 + 12), 1, Milliliters(2_000), DialysisSolution.Glucose227);
        var high = WhatIf.Run(Somebody, point, one, RegimenKnob.PlasmaGlucose, [20], Plain).Points[0].Outlook![Ultrafiltration].Difference!.Value.Median;
        Assert.Equal(162 - 244, high, 20.0);
    }

    [Fact]
    public void What_is_found_in_a_comparison_says_in_which_row()
    {
        // The strongest bag every night is a warning of its own row; what every row has stands once, with "all"; what is found nowhere stands nowhere.
        var point = MembraneEnsemble.Of(Membrane);
        var strong = Night(5) with { Night = [.. Night(5).Night.Select(exchange => exchange with { Solution = DialysisSolution.Glucose386 })] };
        var compared = RegimenComparison.Run(Somebody, point, Night(5), [("B", strong), ("C", Night(6))], Plain);
        var codes = compared.Rows.ToDictionary(row => row.Name, row => row.Findings.Where(finding => finding.Severity >= Severity.Warning).ToList());
        Assert.NotEmpty(codes["B"].Except(codes["C"]));
        var text = Transport.Reporting.RegimenReports.Of(compared).Text;
        foreach (var finding in codes.Values.SelectMany(found => found).Distinct())
        {
            var rows = codes.Where(pair => pair.Value.Contains(finding)).Select(pair => pair.Key == compared.Present.Name ? "now" : pair.Key).ToList();
            var where = rows.Count == 3 ? "all" : string.Join(", ", rows);
            Assert.Contains((finding with { Field = finding.Field is null ? where : $"{finding.Field}, {where}" }).ToString(), text, StringComparison.Ordinal);
        }

        // A place where a knob cannot stand is named with its reason.
        Assert.Contains("night length 1 h", Transport.Reporting.RegimenReports.Of(WhatIf.Run(Somebody, point, Night(5), RegimenKnob.NightLength, [1, 9], Plain)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_place_where_a_knob_cannot_stand_is_a_point_with_its_reasons()
    {
        var point = MembraneEnsemble.Of(Membrane);
        var short1 = WhatIf.Run(Somebody, point, Night(5), RegimenKnob.NightLength, [1, 9], Plain);
        Assert.Null(short1.Points[0].Outlook);
        Assert.Contains(short1.Points[0].Findings, finding => finding.Code == "night-too-short");
        Assert.NotNull(short1.Points[1].Outlook);
        Assert.Equal("knob-not-possible", Assert.Single(WhatIf.Run(Somebody, point, Night(5), RegimenKnob.Residual, [-5], Plain).Points[0].Findings).Code);
        var varied = new Regimen(TimeSpan.FromHours(9), [new Exchange(DialysisSolution.Glucose136, Milliliters(1_500)), new Exchange(DialysisSolution.Glucose136, Milliliters(2_500))]);
        Assert.Equal("knob-not-possible", Assert.Single(WhatIf.Run(Somebody, point, varied, RegimenKnob.Cycles, [3], Plain).Points[0].Findings).Code);

        // A dry night has nothing to turn: no division by it, and no answer that nothing would change.
        var dry = new Regimen(TimeSpan.FromHours(9), [], [new(DialysisSolution.Glucose136, Milliliters(2_000)), new(DialysisSolution.Glucose136, Milliliters(2_000))]);
        foreach (var knob in new[] { RegimenKnob.Dwell, RegimenKnob.VolumePerCycle, RegimenKnob.NightGlucose, RegimenKnob.Cycles })
        {
            Assert.Equal("knob-not-possible", Assert.Single(WhatIf.Run(Somebody, point, dry, knob, [80], Plain).Points[0].Findings).Code);
        }

        Assert.Throws<ArgumentException>(() => WhatIf.Run(Somebody, point, Night(5), RegimenKnob.Cycles, []));
        Assert.Throws<ArgumentException>(() => WhatIf.Run(Somebody, point, Night(5), RegimenKnob.Cycles, [double.NaN]));
    }
}
