using System.Globalization;
using System.Text.RegularExpressions;

namespace Transport.Tests.References;

/// <summary>reference-data is one truth: every folder is complete, and every C# table that repeats a figure repeats it exactly.</summary>
public sealed partial class ReferenceDataTests
{
    private static readonly string[] Columns = ["item", "condition", "unit", "value", "sd", "low", "high", "n", "mark"];

    /// <summary>Invented patients, not published figures: another form.</summary>
    private const string Examples = "examples";

    public static TheoryData<string> Folders =>
        new(Directory.GetDirectories(ReferenceData.Folder).Select(folder => Path.GetFileName(folder)!).Where(name => name != Examples).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Folders))]
    public void Every_folder_says_where_from_how_known_and_what_for(string folder)
    {
        var source = File.ReadAllText(Path.Combine(ReferenceData.Folder, folder, "source.md"));

        Assert.Matches("^# .+", source);
        Assert.Matches(MarkLine(), source);
        foreach (var heading in new[] { "Source", "Conditions", "May be used for", "Known disagreements" })
        {
            Assert.Contains($"**{heading}.**", source, StringComparison.Ordinal);
        }

        Assert.Contains($"[{folder}]({folder}/source.md)", File.ReadAllText(Path.Combine(ReferenceData.Folder, "README.md")), StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void Every_table_loads_and_every_row_carries_a_mark(string folder)
    {
        var lines = File.ReadAllLines(Path.Combine(ReferenceData.Folder, folder, "values.csv"));
        var width = lines[0].Split(',').Length;
        Assert.All(lines, line => Assert.Equal(width, line.Split(',').Length));
        var rows = ReferenceData.Rows(folder);
        Assert.NotEmpty(rows);
        if (folder == "golden-dwells")
        {
            return;
        }

        Assert.Equal(Columns, lines[0].Split(','));
        Assert.All(rows, row =>
        {
            Assert.NotEmpty(row["item"]);
            Assert.True(Enum.TryParse<Evidence>(row["mark"], ignoreCase: true, out _), $"{folder}: {row["item"]} has the mark '{row["mark"]}'");
            var numbers = new[] { "value", "sd", "low", "high", "n" }.Where(column => row[column].Length > 0).ToList();
            Assert.NotEmpty(numbers);
            Assert.All(numbers, column => Assert.True(double.IsFinite(row.Number(column))));
            if (row["low"].Length > 0 && row["high"].Length > 0)
            {
                Assert.True(row.Number("low") <= row.Number("high"));
            }
        });
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_folder_that_holds_memory_says_memory(string folder)
    {
        if (folder == "golden-dwells" || ReferenceData.Rows(folder).All(row => row["mark"] != "memory"))
        {
            return;
        }

        Assert.Contains("memory", File.ReadAllText(Path.Combine(ReferenceData.Folder, folder, "source.md")), StringComparison.Ordinal);
    }

    [Fact]
    public void Category_borders_are_those_of_their_tables()
    {
        Check(CategoryCuts.Twardowski1987Creatinine, "twardowski-1987-categories", "dp_creatinine_4h");
        Check(CategoryCuts.Twardowski1987Glucose, "twardowski-1987-categories", "dd0_glucose_4h");
        Check(CategoryCuts.Warady1996Creatinine, "warady-1996-children", "dp_creatinine_4h");
        Check(CategoryCuts.Warady1996Glucose, "warady-1996-children", "dd0_glucose_4h");

        static void Check(CategoryCuts cuts, string folder, string condition)
        {
            Assert.Equal(Value(folder, "slow_border", condition), cuts.SlowBorder);
            Assert.Equal(Value(folder, "middle_border", condition), cuts.MiddleBorder);
            Assert.Equal(Value(folder, "fast_border", condition), cuts.FastBorder);
            Assert.Equal(Row(folder, "fast_border", condition)["mark"], Mark(cuts.Evidence));
        }
    }

    [Fact]
    public void Printed_classes_of_1987_fall_into_their_classes()
    {
        // Both printed ends of each class, D/P creatinine and D/D0 glucose. D/D0's printed Low-average starts at 0.39, mean 0.38 in the gap.
        foreach (var (condition, cuts) in new[]
        {
            ("dp_creatinine_4h", CategoryCuts.Twardowski1987Creatinine),
            ("dd0_glucose_4h", CategoryCuts.Twardowski1987Glucose),
        })
        {
            foreach (var (item, category) in new[]
            {
                ("class_slow", TransportCategory.Slow), ("class_slow_average", TransportCategory.SlowAverage),
                ("class_fast_average", TransportCategory.FastAverage), ("class_fast", TransportCategory.Fast),
            })
            {
                var row = Row("twardowski-1987-categories", item, condition);
                Assert.Equal(category, cuts.Of(row.Number("low")));
                Assert.Equal(category, cuts.Of(row.Number("high")));
            }
        }
    }

    [Fact]
    public void Drain_volume_minus_ultrafiltration_of_1987_is_one_fill_at_every_border()
    {
        // 2050 mL exactly at both ends and at 2650; the inner ultrafiltration borders 35 and 320 are printed rounded to 5 and 10 mL.
        const string folder = "twardowski-1987-categories";
        var fill = Value(folder, "reference_fill");
        var (drainFast, netFast) = (Row(folder, "class_fast", "drain_volume_4h"), Row(folder, "class_fast", "net_ultrafiltration_4h"));
        var (drainAverage, netAverage) = (Row(folder, "class_fast_average", "drain_volume_4h"), Row(folder, "class_fast_average", "net_ultrafiltration_4h"));
        var (drainSlowAverage, netSlowAverage) = (Row(folder, "class_slow_average", "drain_volume_4h"), Row(folder, "class_slow_average", "net_ultrafiltration_4h"));
        var (drainSlow, netSlow) = (Row(folder, "class_slow", "drain_volume_4h"), Row(folder, "class_slow", "net_ultrafiltration_4h"));

        Assert.Equal(2050, fill);
        Assert.Equal(fill, drainFast.Number("low") - netFast.Number("low"));
        Assert.Equal(fill, drainFast.Number("high") - netFast.Number("high"), 2.5);
        Assert.Equal(fill, drainAverage.Number("high") - netAverage.Number("high"), 5.0);
        Assert.Equal(fill, drainSlowAverage.Number("high") - netSlowAverage.Number("high"));
        Assert.Equal(fill, drainSlow.Number("high") - netSlow.Number("high"));
    }

    [Fact]
    public void Absolute_glucose_over_D_over_D0_of_1987_implies_one_diluted_D0()
    {
        // About 1930 mg/dL at every border against 2270 in the bag: a dilution of 0.85. Rounding of D/D0 to 0.01 allows 4 %.
        const string folder = "twardowski-1987-categories";
        foreach (var item in new[] { "class_fast", "class_fast_average", "class_slow_average", "class_slow" })
        {
            var (glucose, ratio) = (Row(folder, item, "dialysate_glucose_4h"), Row(folder, item, "dd0_glucose_4h"));
            Assert.InRange(glucose.Number("low") / ratio.Number("low"), 1930 * 0.96, 1930 * 1.04);
            Assert.InRange(glucose.Number("high") / ratio.Number("high"), 1930 * 0.96, 1930 * 1.04);
        }
    }

    [Fact]
    public void Borders_of_1987_are_mean_and_SD_of_1987()
    {
        // 0.65 ± 0.16 gives 0.49 and 0.81; the lower border is printed as 0.50, so the SD used there was 0.15. D/D0: 0.38 ± 0.12 within 0.01.
        var creatinine = ReferencePopulations.NorthAmerica1987.DialysateToPlasmaCreatinine;
        var glucose = ReferencePopulations.NorthAmerica1987.DialysateToInitialGlucose!;

        Assert.Equal(CategoryCuts.Twardowski1987Creatinine.FastBorder, creatinine.Mean + creatinine.StandardDeviation, 1e-12);
        Assert.Equal(CategoryCuts.Twardowski1987Creatinine.MiddleBorder, creatinine.Mean);
        Assert.Equal(CategoryCuts.Twardowski1987Creatinine.SlowBorder, creatinine.Mean - 0.15, 1e-12);
        Assert.Equal(CategoryCuts.Twardowski1987Glucose.FastBorder, glucose.Mean - glucose.StandardDeviation, 1e-12);
        Assert.Equal(CategoryCuts.Twardowski1987Glucose.SlowBorder, glucose.Mean + glucose.StandardDeviation, 0.0101);
    }

    [Fact]
    public void The_classes_cut_a_national_registry_as_a_normal_distribution_would()
    {
        // Counts 221 / 853 / 1068 / 344 of 2486 against a normal 0.66 ± 0.13 cut at 0.50, 0.65, 0.81: 10.9 / 36.0 / 40.7 / 12.4 % (computed,
        // rounded to add up to 100, hence 0.1 %).
        // Counting puts 0.3 to 1 % on each share; skew and rounded mean and SD the rest: 2.5 %.
        var rows = ReferenceData.Rows("japan-registry-creatinine").Where(row => row["item"] == "count").ToList();
        var registry = ReferencePopulations.JapanRegistry.DialysateToPlasmaCreatinine;
        var cuts = CategoryCuts.Twardowski1987Creatinine;
        var expected = cuts.ProbabilitiesOf(registry.Mean, registry.StandardDeviation);

        Assert.Equal(2486, rows.Sum(row => row.Number("value")));
        Assert.Equal([0.109, 0.360, 0.407, 0.124], TransportCategories.All.Select(category => expected[category]), (a, b) => Math.Abs(a - b) < 0.001);
        Assert.All(TransportCategories.All.Zip(rows), pair =>
            Assert.InRange(pair.Second.Number("value") / 2486, expected[pair.First] - 0.025, expected[pair.First] + 0.025));
    }

    [Fact]
    public void Reference_populations_are_those_of_their_tables()
    {
        Check(ReferencePopulations.NorthAmerica1987, "mean", "dp_creatinine_4h", "dd0_glucose_4h", "net_ultrafiltration_4h", null);
        Check(ReferencePopulations.Italy2019, "3.86 %", "dp_creatinine_4h", "dd0_glucose_4h", null, "sodium_dip_60");
        Check(ReferencePopulations.Madrid2010, "3.86 %", "dp_creatinine_4h", null, "net_ultrafiltration_4h", "sodium_dip_60");
        Check(ReferencePopulations.CrossOver2003Middle, "2.27 %", "dp_creatinine_4h", null, "net_ultrafiltration_4h", null);
        Check(ReferencePopulations.CrossOver2003Strong, "3.86 %", "dp_creatinine_4h", null, "net_ultrafiltration_4h", null);
        Check(ReferencePopulations.JapanRegistry, "mean", "dp_creatinine_4h", null, null, null);
        Check(ReferencePopulations.ItalianChildren1993, "mean", "dp_creatinine_4h", "dd0_glucose_4h", null, null);
        Check(ReferencePopulations.ManualExchangeCohort, "mean", "dp_creatinine_4h", null, null, null);
        Check(ReferencePopulations.Children1996, "mean", "dp_creatinine_4h", "dd0_glucose_4h", null, null);

        var italy = Row("virga-2019-strong-glucose", "net_ultrafiltration_4h", "3.86 % corrected for overfill");
        Assert.Equal(new(italy.Number("value"), italy.Number("sd")), ReferencePopulations.Italy2019.NetUltrafiltrationMilliliters);
        var amsterdam = ReferencePopulations.Amsterdam2003;
        Assert.Equal(Value(amsterdam.Folder, "dp_creatinine_4h", "3.86 %"), amsterdam.DialysateToPlasmaCreatinine.Mean);
        Assert.Equal(Value(amsterdam.Folder, "dp_creatinine_4h_sd"), amsterdam.DialysateToPlasmaCreatinine.StandardDeviation);
        Assert.All(ReferencePopulations.All, population => Assert.True(Directory.Exists(Path.Combine(ReferenceData.Folder, population.Folder))));

        static void Check(ReferencePopulation population, string condition, string creatinine, string? glucose, string? ultrafiltration, string? dip)
        {
            var row = Row(population.Folder, creatinine, condition);
            Assert.Equal(new(row.Number("value"), row.Number("sd")), population.DialysateToPlasmaCreatinine);
            Assert.Equal(Mark(population.Evidence), row["mark"]);
            Assert.Equal(population.Count, (int)row.Number("n"));
            Same(population.DialysateToInitialGlucose, glucose);
            Same(population.SodiumDipMillimolesPerLiter, dip);
            if (ultrafiltration is not null)
            {
                Same(population.NetUltrafiltrationMilliliters, ultrafiltration);
            }

            void Same(ReferenceDistribution? distribution, string? item)
            {
                var found = item is null ? null : Row(population.Folder, item, condition);
                Assert.Equal(found is null ? null : new ReferenceDistribution(found.Number("value"), found.Number("sd")), distribution);
            }
        }
    }

    [Fact]
    public void Thresholds_are_those_of_their_table_and_none_is_missing()
    {
        var rows = ReferenceData.Rows("morelle-2021-thresholds").ToDictionary(row => row["item"]);
        var thresholds = typeof(MembraneThresholds).GetProperties()
            .Where(property => property.PropertyType == typeof(Threshold))
            .ToDictionary(property => SnakeCase(property.Name), property => (Threshold)property.GetValue(MembraneThresholds.Default)!);

        Assert.Equal(rows.Keys.Order(StringComparer.Ordinal), thresholds.Keys.Order(StringComparer.Ordinal));
        Assert.All(thresholds, pair =>
        {
            Assert.Equal(rows[pair.Key].Number("value"), pair.Value.Value);
            Assert.Equal(rows[pair.Key]["unit"], pair.Value.Unit);
            Assert.Equal(rows[pair.Key]["mark"], Mark(pair.Value.Evidence));
        });
    }

    [Fact]
    public void Assay_and_within_person_defaults_are_those_of_their_table()
    {
        const string folder = "virga-2002-day-to-day";
        var options = EquilibrationIndicesOptions.Default;

        Assert.Equal(Value(folder, "within_person_sd_dp_creatinine"), options.WithinPersonStandardDeviation);
        Assert.Equal(Value(folder, "assay_variation"), options.AssayVariation);
        Assert.Equal(Value(folder, "sodium_assay_variation"), options.SodiumAssayVariation);
    }

    [Fact]
    public void Named_solutions_are_those_of_their_table()
    {
        const string folder = "dialysis-solutions";

        Assert.Equal(Value(folder, "glucose", "glucose 1.36 % anhydrous"), DialysisSolution.Glucose136.Glucose.MillimolesPerLiter);
        Assert.Equal(Value(folder, "glucose", "glucose 2.27 % anhydrous"), DialysisSolution.Glucose227.Glucose.MillimolesPerLiter);
        Assert.Equal(Value(folder, "glucose", "glucose 3.86 % anhydrous"), DialysisSolution.Glucose386.Glucose.MillimolesPerLiter);
        Assert.All(DialysisSolution.UsualGlucose, solution => Assert.Equal(Value(folder, "sodium", "lactate A"), solution.Sodium.MillimolesPerLiter));

        // Named to what a label rounds to: within 0.5 %.
        double Holds(Solute solute) => DialysisSolution.Glucose227.Others[solute].MillimolesPerLiter;
        Assert.Equal(1, Holds(Solutes.Lactate) / Value(folder, "lactate", "lactate A"), 0.005);
        Assert.Equal(1, Holds(Solutes.Calcium) / Value(folder, "calcium", "lactate A 1.25"), 0.005);
        Assert.Equal(1, Holds(Solutes.Magnesium) / Value(folder, "magnesium", "lactate A"), 0.005);
    }

    [Fact]
    public void The_textbook_membrane_is_that_of_its_table()
    {
        const string folder = "three-pore-textbook";
        var (membrane, pores) = (ReferenceMembranes.Textbook, PoreSystem.Textbook);

        Assert.Equal(Value(folder, "small_pore_radius"), pores.SmallRadiusAngstrom);
        Assert.Equal(Value(folder, "large_pore_radius"), pores.LargeRadiusAngstrom);
        Assert.Equal(Value(folder, "ultrasmall_fraction"), pores.UltrasmallFraction);
        Assert.Equal(Value(folder, "small_fraction"), pores.SmallFraction, 1e-15);
        Assert.Equal(Value(folder, "large_fraction"), pores.LargeFraction);
        Assert.Equal(
            Value(folder, "ultrafiltration_coefficient", "per 1.73 m²"), membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury);
        Assert.Equal(Value(folder, "diffusion_area", "per 1.73 m²"), membrane.DiffusionArea.Centimeters);
        Assert.Equal(Value(folder, "lymphatic_removal"), membrane.LymphaticRemoval.MillilitersPerMinute);
        Assert.Equal(Value(folder, "hydrostatic_pressure_difference"), membrane.HydrostaticPressureDifference.MillimetersOfMercury);
        Assert.Equal(Value(folder, "oncotic_pressure_difference"), membrane.OncoticPressureDifference.MillimetersOfMercury);
        Assert.Equal(Value(folder, "sodium_permeability"), membrane.SodiumPermeability.MillilitersPerMinute);
        Assert.Equal(Value(folder, "reference_volume", "fill plus residual"), membrane.ReferenceVolume.Milliliters);
        Assert.Equal(Value(folder, "volume_per_pressure"), membrane.VolumePerPressure!.Value.Milliliters);
        Assert.Equal(Value(folder, "transient_amplitude"), membrane.TransientAmplitude);
        Assert.Equal(Value(folder, "transient_time"), membrane.TransientTime.TotalMinutes);
        foreach (var solute in new[]
        {
            Solutes.Urea, Solutes.Creatinine, Solutes.Glucose, Solutes.Sodium, Solutes.Beta2Microglobulin, Solutes.Albumin, Solutes.ImmunoglobulinG,
            Solutes.Potassium, Solutes.Phosphate, Solutes.Bicarbonate, Solutes.Lactate, Solutes.Calcium, Solutes.Magnesium,
        })
        {
            Assert.Equal(Value(folder, "radius", solute.Name), solute.RadiusAngstrom);
        }

        foreach (var (solute, permeability) in ReferenceMembranes.MinorSolutes)
        {
            Assert.Equal(Value(folder, "permeability_over_creatinine", solute.Name), permeability.ToCreatinineRatio);
        }
    }

    [Theory]
    [InlineData("plasma as measured", PlasmaLevel.AsMeasured)]
    [InlineData("plasma water", PlasmaLevel.PlasmaWater)]
    public void The_mean_incident_adult_is_that_of_its_table(string condition, PlasmaLevel level)
    {
        const string folder = "mean-incident-adult";
        var membrane = ReferenceMembranes.MeanIncidentAdult(level);

        Assert.Equal(
            Value(folder, "ultrafiltration_coefficient", condition), membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury);
        Assert.Equal(Value(folder, "diffusion_area", condition), membrane.DiffusionArea.Centimeters);
        Assert.Equal(Value(folder, "glucose_permeability_scale", condition), membrane.GlucosePermeabilityScale);
    }

    [Fact]
    public void The_classical_membrane_is_that_of_its_table()
    {
        const string folder = "lumped-membrane";
        var membrane = LumpedMembrane.Typical;

        Assert.Equal(4, membrane.MassTransfer.Count);
        foreach (var (solute, transfer) in membrane.MassTransfer)
        {
            var row = Row(folder, "mass_transfer_" + solute.Name);
            Assert.Equal(row.Number("value"), transfer.MillilitersPerMinute);
            Assert.InRange(transfer.MillilitersPerMinute, row.Number("low"), row.Number("high"));
        }

        Assert.Equal(Value(folder, "sieving_coefficient"), membrane.SievingCoefficient);
        Assert.Equal(Value(folder, "conductance_to_glucose"), membrane.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury, 1e-12);
        Assert.Equal(Value(folder, "conductance_to_sodium"), membrane.OsmoticConductanceToSodium.MicrolitersPerMinutePerMillimeterOfMercury, 1e-12);
        Assert.Equal(Value(folder, "fluid_absorption"), membrane.FluidAbsorption.MillilitersPerMinute);
    }

    [Fact]
    public void The_mean_incident_adult_of_one_barrier_is_that_of_its_table_and_returns_the_mean_test()
    {
        const string folder = "lumped-mean-incident-adult";
        var membrane = LumpedMembrane.MeanIncidentAdult;
        Assert.Equal(Value(folder, "mass_transfer_creatinine"), membrane.MassTransfer[Solutes.Creatinine].MillilitersPerMinute);
        Assert.Equal(
            Value(folder, "mass_transfer_glucose_over_creatinine"), membrane.MassTransfer[Solutes.Glucose] / membrane.MassTransfer[Solutes.Creatinine], 1e-12);
        Assert.Equal(Value(folder, "conductance_to_glucose"), membrane.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury, 1e-12);

        // 3.86 %, 4 h, n 758 (read): half a printed digit, and 5 mL.
        var patient = Patient.Example;
        var course = DwellSimulation.Run(patient, membrane, new(
            DialysisSolution.Glucose386, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), patient.Plasma)));
        var end = TimeSpan.FromHours(4);
        Assert.Equal(0.73, course.DialysateAt(Solutes.Creatinine, end) / patient.Plasma.Creatinine, 0.005);
        Assert.Equal(0.25, course.DialysateAt(Solutes.Glucose, end) / course.DialysateAt(Solutes.Glucose, TimeSpan.Zero), 0.005);
        Assert.Equal(675, course.NetUltrafiltrationAt(end).Milliliters, 5.0);
    }

    [Fact]
    public void The_spreads_of_the_population_prior_are_those_of_their_table()
    {
        // The table's log-normal spreads are those of its printed means and SDs: σ² = ln(1 + (SD/mean)²), rounded to two decimals.
        const string folder = "johansson-2006-population";
        var prior = PopulationPrior.IncidentAdults();

        Assert.Equal(Value(folder, "diffusion_area_log_sd"), prior.DiffusionAreaLogDeviation);
        Assert.Equal(Value(folder, "large_pore_flow_log_sd"), prior.LargePoreFractionLogDeviation);

        // LpS follows from the osmotic conductance and the share of the ultrasmall pores: its logarithm has the published spread. 20,000 draws know it to 0.5 %.
        var logs = prior.ToEnsemble(Area.FromSquareMeters(1.73), 20_000, seed: 6).UltrafiltrationCoefficients.Select(Math.Log);
        Assert.Equal(Value(folder, "ultrafiltration_coefficient_log_sd"), MathNet.Numerics.Statistics.Statistics.StandardDeviation(logs), 0.01);
        foreach (var item in new[] { "diffusion_area", "ultrafiltration_coefficient", "large_pore_flow" })
        {
            var row = Row(folder, item, "per 1.73 m²");
            Assert.Equal(
                Math.Sqrt(Math.Log(1 + Math.Pow(row.Number("sd") / row.Number("value"), 2))), Value(folder, item + "_log_sd"), 0.0051);
        }
    }

    [Fact]
    public void Body_water_and_surface_are_the_coefficients_of_their_table()
    {
        // Second witness: the formulas written out from the table, for one man and one woman. Rounding only.
        const string folder = "watson-1980-body-size";
        double Of(string item) => Value(folder, item);
        var (height, weight) = (Length.FromCentimeters(158), Mass.FromKilograms(81));

        Assert.Equal(
            Of("watson_male_intercept") + Of("watson_male_age") * 47 + Of("watson_male_height") * 158 + Of("watson_male_weight") * 81,
            BodySize.WaterByWatson(Sex.Male, 47, height, weight).Liters, 1e-12);
        Assert.Equal(
            Of("watson_female_intercept") + Of("watson_female_height") * 158 + Of("watson_female_weight") * 81,
            BodySize.WaterByWatson(Sex.Female, 47, height, weight).Liters, 1e-12);
        Assert.Equal(
            Of("hume_male_intercept") + Of("hume_male_height") * 158 + Of("hume_male_weight") * 81,
            BodySize.WaterByHumeWeyers(Sex.Male, height, weight).Liters, 1e-12);
        Assert.Equal(
            Of("hume_female_intercept") + Of("hume_female_height") * 158 + Of("hume_female_weight") * 81,
            BodySize.WaterByHumeWeyers(Sex.Female, height, weight).Liters, 1e-12);
        foreach (var (name, surface) in new[]
        {
            ("du_bois", BodySize.SurfaceByDuBois(height, weight)),
            ("haycock", BodySize.SurfaceByHaycock(height, weight)),
            ("gehan_george", BodySize.SurfaceByGehanGeorge(height, weight)),
        })
        {
            Assert.Equal(
                Of(name + "_factor") * Math.Pow(81, Of(name + "_weight_power")) * Math.Pow(158, Of(name + "_height_power")),
                surface.SquareMeters, 1e-12);
        }

        Assert.Equal(Math.Sqrt(158 * 81 / Of("mosteller_divisor")), BodySize.SurfaceByMosteller(height, weight).SquareMeters, 1e-12);
    }

    [GeneratedRegex(@"\*\*Mark:\*\* .*(read|memory|computed|choice)")]
    private static partial Regex MarkLine();

    private static IReadOnlyDictionary<string, string> Row(string folder, string item, string condition = "") =>
        Assert.Single(ReferenceData.Rows(folder), row => row["item"] == item && row["condition"] == condition);

    private static double Value(string folder, string item, string condition = "")
    {
        var rows = ReferenceData.Rows(folder).Where(row => row["item"] == item && (condition.Length == 0 || row["condition"] == condition)).ToList();
        return Assert.Single(rows).Number("value");
    }

    private static string Mark(Evidence evidence) => evidence.ToString().ToLower(CultureInfo.InvariantCulture);

    private static string SnakeCase(string name) =>
        string.Concat(name.Select((c, i) => (i > 0 && char.IsUpper(c) ? "_" : "") + char.ToLower(c, CultureInfo.InvariantCulture)));
}
