namespace Transport.Tests.Doubts;

public sealed class ModelDiscrepanciesTests
{
    private static readonly Dictionary<string, ModelDiscrepancies> Tables = new()
    {
        ["mean incident adult"] = ModelDiscrepancies.MeanIncidentAdult,
        ["textbook"] = ModelDiscrepancies.Textbook,
    };

    private static readonly Dictionary<string, DialysisSolution?> Solutions = new()
    {
        ["none"] = null,
        ["1.36"] = DialysisSolution.Glucose136,
        ["2.27"] = DialysisSolution.Glucose227,
        ["3.86"] = DialysisSolution.Glucose386,
    };

    [Fact]
    public void The_table_in_code_is_the_table_in_reference_data()
    {
        foreach (var row in ReferenceData.Rows("model-discrepancy"))
        {
            if (row["condition"] == "night of cycles")
            {
                Assert.All(Tables.Values, table => Assert.Equal(row.Number("sd"), table.DeviationOfCycles.Milliliters));
                continue;
            }

            var (set, tested, predicted) = row["condition"].Split("; ") switch
            {
                [var first, var second] => ("mean incident adult", first["tested ".Length..], second["predicted ".Length..^" %".Length]),
                [var of, var first, var second] => (of, first["tested ".Length..], second["predicted ".Length..^" %".Length]),
                _ => throw new FormatException(row["condition"]),
            };
            var found = Tables[set].Of(Solutions[predicted]!, Solutions[tested]);
            Assert.Equal(row.Number("value"), row["item"] == "gain" ? found.Gain : found.Offset.Milliliters);
            if (row["item"] == "offset")
            {
                Assert.Equal(row.Number("sd"), found.Deviation.Milliliters);
            }
        }
    }

    [Theory]
    [InlineData("mean incident adult")]
    [InlineData("textbook")]
    public void Where_there_was_no_test_the_offset_is_what_was_published_less_what_the_set_gives(string set)
    {
        // −75 mL (Kidney Int 1995;48:866), 348 mL of 58 and 478 mL of 23 people, 675 mL of 758 (read); 4 h, 2 L, 250 mL of used fluid. Offsets are rounded to 1 mL.
        var membrane = set == "textbook" ? ReferenceMembranes.Textbook : ReferenceMembranes.MeanIncidentAdult();
        (DialysisSolution Solution, double Published)[] series =
            [(DialysisSolution.Glucose136, -75), (DialysisSolution.Glucose227, (348 * 58 + 478 * 23) / 81.0), (DialysisSolution.Glucose386, 675)];
        Assert.All(series, one => Assert.Equal(
            one.Published - Course(membrane, one.Solution).NetUltrafiltrationAt(FourHours).Milliliters, Tables[set].Of(one.Solution, null).Offset.Milliliters, 0.6));
        Assert.Equal(set, Tables[set].ParameterSet);
    }

    [Fact]
    public void A_night_of_cycles_is_as_unsure_as_two_nights_of_the_same_people_ask_for()
    {
        // Six cycles of 2 L, or two of 1.5 and three of 3 L, in 9 h: 100 mL more with the second (Fischbach et al. 2011, read). The miss is shared by two nights, so
        // over √2; in proportion to dwell, the deviation at 4 h. It is rounded to 10 mL, and the strength of the fluid was not in the abstract: 4 mL.
        foreach (var solution in new[] { DialysisSolution.Glucose136, DialysisSolution.Glucose227 })
        {
            var equal = Regimen.Cycling(TimeSpan.FromHours(9), 6, Volume.FromLiters(2), solution);
            var brief = new Exchange(solution, Volume.FromLiters(1.5), TimeSpan.FromMinutes(45));
            var varied = equal with { Night = [brief, brief, .. Enumerable.Repeat(new Exchange(solution, Volume.FromLiters(3)), 3)] };
            var night = RegimenSimulation.Run(Patient.Example, ReferenceMembranes.MeanIncidentAdult(), equal);
            var gained = RegimenSimulation.Run(Patient.Example, ReferenceMembranes.MeanIncidentAdult(), varied).NightUltrafiltration - night.NightUltrafiltration;
            var ofNight = (100 - gained.Milliliters) / Math.Sqrt(2);
            Assert.Equal(ofNight / night.Cycles.Sum(cycle => cycle.DwellTime.TotalHours / 4), ModelDiscrepancies.MeanIncidentAdult.DeviationOfCycles.Milliliters, 4.0);
        }

        // A tested strength is met by the fit in a dwell that stands alone, not in cycles; an untested one errs for both reasons.
        var table = ModelDiscrepancies.MeanIncidentAdult;
        var (weak, middle) = (DialysisSolution.Glucose136, DialysisSolution.Glucose227);
        Assert.Equal(0, table.Of(middle, middle).Deviation.Milliliters);
        Assert.Equal(50, table.Of(middle, middle, ExchangeMode.Cycle).Deviation.Milliliters);
        Assert.Equal(Math.Sqrt(92 * 92 + 50 * 50), table.Of(weak, middle, ExchangeMode.Cycle).Deviation.Milliliters, 1e-9);
        Assert.Equal(table.Of(weak, middle).Offset, table.Of(weak, middle, ExchangeMode.Cycle).Offset);
    }

    [Fact]
    public void Another_table_replaces_it_and_no_condition_stands_in_it_twice()
    {
        var own = ModelDiscrepancies.MeanIncidentAdult with
        {
            Rows = [new(GlucoseStrength.Middle, GlucoseStrength.Strong, new(0.9, Volume.FromMilliliters(-10), Volume.FromMilliliters(40)))],
        };
        Assert.Equal(0.9, own.Of(DialysisSolution.Glucose386, DialysisSolution.Glucose227).Gain);
        Assert.Equal(ModelDiscrepancy.None, own.Of(DialysisSolution.Glucose136, DialysisSolution.Glucose227));
        Assert.Throws<ArgumentException>(() => own with { Rows = [own.Rows[0], own.Rows[0]] });
    }

    [Fact]
    public void The_gain_from_the_middle_to_the_strong_solution_is_what_the_paired_series_asks_for()
    {
        // 23 people with both strengths: 478 and 936 mL, D/P creatinine 0.67 (CIN 2003, read). The membrane with that D/P and 478 mL at 2.27 % gives
        // more than 936 mL at 3.86 %; the gain mends that. Rounding of the gain to two digits allows 1 %.
        double area = 20_000, conductance = 0.08;
        for (var i = 0; i < 15; i++)
        {
            area = Root(a => Course(a, conductance, 126.0).DialysateToPlasmaAt(Solutes.Creatinine, FourHours) - 0.67, 5_000, 60_000);
            conductance = Root(c => Course(area, c, 126.0).NetUltrafiltrationAt(FourHours).Milliliters - 478, 0.005, 0.5);
        }

        var strong = Course(area, conductance, 214.3).NetUltrafiltrationAt(FourHours).Milliliters;
        Assert.Equal(936.0, ModelDiscrepancies.MeanIncidentAdult.Of(DialysisSolution.Glucose386, DialysisSolution.Glucose227).Gain * strong, 10.0);
    }

    private static readonly TimeSpan FourHours = TimeSpan.FromHours(4);

    private static DwellCourse Course(double area, double conductance, double glucose)
    {
        var membrane = ReferenceMembranes.MeanIncidentAdult() with
        {
            DiffusionArea = DiffusionArea.FromCentimeters(area),
            UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(conductance),
        };
        return Course(membrane, DialysisSolution.OfGlucose(glucose));
    }

    private static DwellCourse Course(ThreePoreMembrane membrane, DialysisSolution solution)
    {
        var residual = ResidualFluid.Used(Volume.FromMilliliters(250), PlasmaComposition.Typical);
        return DwellSimulation.Run(Patient.Example, membrane, new(solution, Volume.FromLiters(2), FourHours, residual));
    }

    private static double Root(Func<double, double> f, double low, double high) => MathNet.Numerics.RootFinding.Brent.FindRoot(f, low, high, 1e-8);
}
