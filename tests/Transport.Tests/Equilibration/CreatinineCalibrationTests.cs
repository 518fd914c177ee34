namespace Transport.Tests.Equilibration;

/// <summary>A laboratory's factor from readings of unused fluid. Worked by hand.</summary>
public sealed class CreatinineCalibrationTests
{
    [Fact]
    public void Readings_on_a_line_give_its_slope()
    {
        // 0.0005 mg/dL per mg/dL at 1360, 2270 and 3860 mg/dL.
        var calibration = CreatinineCalibration.Of([Reading(1360, 0.68), Reading(2270, 1.135), Reading(3860, 1.93)]);

        Assert.Equal(0.0005, calibration.Factor.Value, 1e-12);
        Assert.Equal(0.0005, calibration.MeanRatio.Value, 1e-12);
        Assert.Equal(0.0005, calibration.Assay.GlucoseFactor!.Value, 1e-12);
        Assert.Empty(calibration.Findings);
    }

    [Fact]
    public void The_slope_weighs_strong_fluid_more_than_the_mean_of_ratios_does()
    {
        // (1000 × 1 + 2000 × 1) / (1000² + 2000²) = 0.0006; mean of 0.001 and 0.0005 is 0.00075.
        var calibration = CreatinineCalibration.Of([Reading(1000, 1), Reading(2000, 1)]);

        Assert.Equal(0.0006, calibration.Factor.Value, 1e-12);
        Assert.Equal(0.00075, calibration.MeanRatio.Value, 1e-12);
        Assert.Null(calibration.Intercept);
    }

    [Fact]
    public void An_assay_that_reads_creatinine_without_glucose_has_an_offset()
    {
        // 0.30 mg/dL more than 0.0005 × glucose throughout, give or take 0.01: 26.5 µmol/L of intercept.
        var calibration = CreatinineCalibration.Of([Reading(500, 0.56), Reading(1360, 0.97), Reading(2270, 1.445), Reading(3860, 2.22)]);

        Assert.Equal("creatinine-assay-offset", Assert.Single(calibration.Findings).Code);
        Assert.Equal(26.5, calibration.Intercept!.Value, 2.0);
    }

    [Fact]
    public void One_reading_is_no_calibration() => Assert.Throws<ArgumentException>(() => CreatinineCalibration.Of([Reading(1360, 0.68)]));

    private static (Concentration, Concentration) Reading(double glucose, double creatinine) =>
        (Concentration.FromMilligramsPerDeciliter(glucose, Solutes.Glucose), Concentration.FromMilligramsPerDeciliter(creatinine, Solutes.Creatinine));
}
