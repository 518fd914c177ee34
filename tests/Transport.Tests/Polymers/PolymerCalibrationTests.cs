using Transport.Tests.Dwells;

namespace Transport.Tests.Polymers;

/// <summary>Two numbers calibrated on two published volumes; everything else is predicted, and the misses are asserted.</summary>
public sealed class PolymerCalibrationTests
{
    private static readonly IReadOnlyList<IReadOnlyDictionary<string, string>> Published = ReferenceData.Rows("icodextrin-fluid-courses");

    private static readonly CalibratedPolymer Calibrated = PolymerCalibration.Run(
        Patient.Example, IcodextrinDwells.Mean, IcodextrinDwells.Dwell(), IcodextrinSeries.FourHours, IcodextrinSeries.SixteenHours);

    private static readonly DwellCourse FirstDwell = IcodextrinDwells.Run();

    private static readonly DwellCourse RegularUser = IcodextrinDwells.Run(plasma: IcodextrinDwells.RegularUser);

    [Theory]
    [InlineData("4 h")]
    [InlineData("10 h day dwell")]
    [InlineData("14 h day dwell")]
    [InlineData("16 h")]
    public void The_series_in_code_are_those_in_reference_data(string condition)
    {
        var row = Published.Single(row => row["item"] == "net_ultrafiltration" && row["condition"] == condition);
        VolumeTarget[] series = [IcodextrinSeries.FourHours, IcodextrinSeries.TenHours, IcodextrinSeries.FourteenHours, IcodextrinSeries.SixteenHours];
        var own = series.Single(target => condition.StartsWith($"{target.Time.TotalHours:0} h", StringComparison.Ordinal));
        Assert.Equal((row.Number("value"), row.Number("sd"), row.Number("n")), (own.Mean.Milliliters, own.Deviation.Milliliters, own.Count));
    }

    [Fact]
    public void The_table_of_misses_marks_what_was_fitted_and_repeats_the_published_figures()
    {
        var figures = PolymerCheck.Of(Calibrated);
        Assert.Equal([true, false, false, true, false, false, false, false, false], figures.Select(figure => figure.IsFitted));
        Assert.Equal([true, false, false, true, true, true, false, true, true], figures.Select(figure => figure.IsMet));
        double[] shares = [Value("absorbed_fraction", "8 h register text"), Value("absorbed_fraction", "12 h register text"), Value("absorbed_fraction", "12 h")];
        Assert.Equal(shares, figures.Skip(4).Take(3).Select(figure => figure.Value));
        var osmolality = Published.Single(row => row["item"] == "effluent_osmolality");
        Assert.Equal((osmolality.Number("low"), osmolality.Number("high")), (figures[8].Low, figures[8].High));
        var absorption = Published.Single(row => row["item"] == "fluid_absorption");
        Assert.Equal((absorption.Number("low"), absorption.Number("high")), (figures[7].Low, figures[7].High));
        Assert.All(figures.Where(figure => figure.IsFitted), figure => Assert.Equal(figure.Value, figure.FirstDwell, 1e-5));
    }

    [Fact]
    public void The_calibrated_values_are_those_in_reference_data_and_those_that_a_membrane_has()
    {
        // Four digits are stored: half of the last.
        var efficiency = Row("osmotic_efficiency", "first dwell");
        var uptake = Row("tissue_uptake", "first dwell");
        Assert.Equal(efficiency.Number("value"), Calibrated.Membrane.PolymerOsmoticEfficiency, 5.1e-5);
        Assert.Equal(uptake.Number("value"), Calibrated.Membrane.PolymerTissueUptake.MillilitersPerMinute, 5.1e-5);
        Assert.Equal(efficiency.Number("sd"), Calibrated.EfficiencyError, 5.1e-4);
        Assert.Equal(uptake.Number("sd"), Calibrated.UptakeError.MillilitersPerMinute, 5.1e-3);
        Assert.Equal(Row("correlation_of_errors", "first dwell").Number("value"), Calibrated.Correlation, 5.1e-3);
        Assert.Equal(efficiency.Number("value"), IcodextrinDwells.Mean.PolymerOsmoticEfficiency);
        Assert.Equal(uptake.Number("value"), IcodextrinDwells.Mean.PolymerTissueUptake.MillilitersPerMinute);
    }

    [Fact]
    public void The_two_volumes_are_returned()
    {
        // Fitted, so exact but for four stored digits: 0.1 mL.
        Assert.Equal(273.0, FirstDwell.UltrafiltrationAt(4), 0.1);
        Assert.Equal(729.0, FirstDwell.UltrafiltrationAt(16), 0.1);
    }

    [Fact]
    public void Every_figure_in_reference_data_is_what_the_model_says()
    {
        foreach (var row in ReferenceData.Rows("icodextrin-calibration").Where(row => row["condition"].Contains(" h ", StringComparison.Ordinal)))
        {
            var hours = double.Parse(row["condition"].Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
            var course = row["condition"].EndsWith("regular user", StringComparison.Ordinal) ? RegularUser : FirstDwell;
            if (row["item"] == "net_ultrafiltration")
            {
                Assert.Equal(row.Number("value"), course.UltrafiltrationAt(hours), 0.51);
            }
            else
            {
                Assert.Equal(row.Number("value"), course.AbsorbedAt(hours), 5.1e-4);
            }
        }
    }

    [Fact]
    public void Without_calibration_there_is_two_to_three_times_too_much_ultrafiltration()
    {
        // The reason for all this: hindrance theory alone gives 761 and 2089 mL where 273 and 729 were measured. A miss, stated.
        var naive = IcodextrinDwells.Run(IcodextrinDwells.Mean with { PolymerOsmoticEfficiency = 1, PolymerTissueUptake = default });
        Assert.InRange(naive.UltrafiltrationAt(4) / 273, 2, 3);
        Assert.InRange(naive.UltrafiltrationAt(16) / 729, 2, 3);

        // And a third of what is absorbed in truth: 8.5 % in 12 h against 34 % and 40.1 % (both read).
        Assert.InRange(naive.AbsorbedAt(12), 0.08, 0.09);
    }

    [Fact]
    public void The_absorbed_share_is_predicted()
    {
        // Not fitted. 20 % in 8 h (register text, read): 23 %, high by a sixth. In 12 h 34 % (the same) and 40.1 % (median of 13, Moberly 2002, read): 32 %, below
        // both, nearer to the first than these are to each other. Two figures in print differ by 6 %: that is the tolerance.
        Assert.InRange(FirstDwell.AbsorbedAt(8) - Value("absorbed_fraction", "8 h register text"), 0, 0.06);
        Assert.InRange(Value("absorbed_fraction", "12 h register text") - FirstDwell.AbsorbedAt(12), 0, 0.06);
        Assert.InRange(Value("absorbed_fraction", "12 h") - FirstDwell.AbsorbedAt(12), 0.06, 0.09);
    }

    [Fact]
    public void Tissue_and_lymph_together_are_the_absorption_that_tracers_show()
    {
        // Not fitted either: 1.2 to 1.3 mL/min late in a dwell (Rippe, Blood Purif 1992;10:189, read), 1.05 ± 0.09 (Imholz 1994, read). The calibration's own
        // standard error is 0.48, so the agreement is better than it has a right to be.
        var loss = Calibrated.Membrane.PolymerTissueUptake.MillilitersPerMinute + Calibrated.Membrane.LymphaticRemoval.MillilitersPerMinute;
        Assert.Equal(1.24, loss, 0.01);
        Assert.InRange(loss, 1.05, 1.3);
    }

    [Fact]
    public void Day_dwells_of_ten_and_fourteen_hours_miss_on_the_high_side()
    {
        // A miss, stated: 352 ± 251 mL at 10 h and 372 ± 258 mL at 14 h (n 36, Jeloka 2006, read), people who used it daily. Without plasma polymer the
        // prediction is 0.9 and 1.2 SD high, with a regular user's 0.5 and 0.8 SD. The series does not rise between 10 and 14 h; the model does.
        Assert.InRange(Off(FirstDwell, 10), 0.85, 1.0);
        Assert.InRange(Off(FirstDwell, 14), 1.15, 1.3);
        Assert.InRange(Off(RegularUser, 10), 0.45, 0.6);
        Assert.InRange(Off(RegularUser, 14), 0.7, 0.85);

        static double Off(DwellCourse course, int hours)
        {
            var row = Published.Single(row => row["condition"] == $"{hours} h day dwell");
            return (course.UltrafiltrationAt(hours) - row.Number("value")) / row.Number("sd");
        }
    }

    [Fact]
    public void The_spread_between_people_is_predicted()
    {
        // Draws of the prior, whose spread of LpS was measured with glucose. 16 h: SD 337 mL in print (n 20, so ± 16 %), 4 h: 137 mL (n 58, ± 9 %); both read.
        // Two standard errors of the print. At 16 h the spread of lymph is calibrated on it, within one: see PopulationPrior.
        Assert.InRange(Deviation(16), 337 * 0.84, 337 * 1.16);
        Assert.InRange(Deviation(4), 137 * 0.82, 137 * 1.18);

        static double Deviation(double hours) => MathNet.Numerics.Statistics.ArrayStatistics.StandardDeviation(
            [.. IcodextrinPopulation.Courses.Select(course => course.UltrafiltrationAt(hours))]);
    }

    [Fact]
    public void A_wrong_question_is_refused()
    {
        Assert.Throws<ArgumentException>(() => PolymerCalibration.Run(
            Patient.Example,
            IcodextrinDwells.Mean,
            IcodextrinDwells.Dwell(solution: DialysisSolution.Glucose227),
            IcodextrinSeries.FourHours,
            IcodextrinSeries.SixteenHours));
        Assert.Throws<ArgumentException>(() => PolymerCalibration.Run(
            Patient.Example, IcodextrinDwells.Mean, IcodextrinDwells.Dwell(), IcodextrinSeries.SixteenHours, IcodextrinSeries.FourHours));
    }

    private static double Value(string item, string condition) =>
        Published.Single(row => row["item"] == item && row["condition"] == condition).Number("value");

    private static IReadOnlyDictionary<string, string> Row(string item, string condition) =>
        ReferenceData.Rows("icodextrin-calibration").Single(row => row["item"] == item && row["condition"] == condition);
}
