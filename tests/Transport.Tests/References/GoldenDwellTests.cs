namespace Transport.Tests.References;

/// <summary>
/// reference-data/golden-dwells: two textbook dwells at eleven times, computed with two other solvers that agree to 1e-8. The table has ten
/// digits and solver agreement of 1e-8, so 1e-7 relative is what it can carry.
/// </summary>
public sealed class GoldenDwellTests
{
    private const double RelativeTolerance = 1e-7;

    [Theory]
    [InlineData("G-3.86", 214.0, true, 1e-9)]
    [InlineData("G-3.86", 214.0, true, 1e-11)]
    [InlineData("G-2.27", 126.0, true, 1e-9)]
    [InlineData("G-2.27", 126.0, true, 1e-11)]
    [InlineData("G-2.27-no-transient", 126.0, false, 1e-9)]
    [InlineData("G-2.27-no-transient", 126.0, false, 1e-11)]
    public void The_golden_dwell_is_reproduced_at_two_integrator_tolerances(string name, double glucose, bool transient, double tolerance)
    {
        var course = CaseG(glucose, transient, tolerance);
        var rows = ReferenceData.Rows("golden-dwells").Where(row => row["case"] == name).ToList();
        Assert.Equal(11, rows.Count);
        foreach (var row in rows)
        {
            var time = TimeSpan.FromMinutes(row.Number("time_min"));
            var pores = course.PoreVolumesAt(time);
            Check(row, "volume_ml", course.VolumeAt(time).Milliliters);
            Check(row, "urea_mmol_per_l", course.DialysateAt(Solutes.Urea, time).MillimolesPerLiter);
            Check(row, "creatinine_relative_to_plasma", course.DialysateToPlasmaAt(Solutes.Creatinine, time));
            Check(row, "glucose_mmol_per_l", course.DialysateAt(Solutes.Glucose, time).MillimolesPerLiter);
            Check(row, "sodium_mmol_per_l", course.DialysateAt(Solutes.Sodium, time).MillimolesPerLiter);
            Check(row, "anion_mmol_per_l", course.DialysateAt(Solutes.SodiumAnion, time).MillimolesPerLiter);
            Check(row, "b2m_relative_to_plasma", course.DialysateToPlasmaAt(Solutes.Beta2Microglobulin, time));
            Check(row, "albumin_relative_to_plasma", course.DialysateToPlasmaAt(Solutes.Albumin, time));
            Check(row, "igg_relative_to_plasma", course.DialysateToPlasmaAt(Solutes.ImmunoglobulinG, time));
            Check(row, "cumulative_ultrasmall_pore_ml", pores.Ultrasmall.Milliliters);
            Check(row, "cumulative_small_pore_ml", pores.Small.Milliliters);
            Check(row, "cumulative_large_pore_ml", pores.Large.Milliliters);
        }
    }

    [Fact]
    public void Landmarks_of_the_golden_dwells_are_found()
    {
        // Printed with the table: 3.86 % still rises at 360 min and has its sodium minimum of 123.2 near 175 min; 2.27 % peaks at
        // about 396 mL near 262 min. Half a printed digit.
        var strong = CaseG(214.0, transient: true, tolerance: 1e-9);
        var minimum = strong.SodiumMinimum();
        Assert.True(strong.PeakUltrafiltration().Time.TotalMinutes > 360);
        Assert.InRange(minimum.Sodium.MillimolesPerLiter, 123.15, 123.25);
        Assert.InRange(minimum.Time.TotalMinutes, 170, 180);

        var (time, height) = CaseG(126.0, transient: true, tolerance: 1e-9).PeakUltrafiltration();
        Assert.InRange(height.Milliliters, 395.5, 396.5);
        Assert.InRange(time.TotalMinutes, 261, 263);
    }

    internal static DwellCourse CaseG(double glucose, bool transient, double tolerance)
    {
        var plasma = PlasmaComposition.Typical;
        var membrane = ReferenceMembranes.Textbook with { TransientAmplitude = transient ? 0.6875 : 0 };
        var residual = new ResidualFluid
        {
            Volume = Volume.FromMilliliters(300),
            Urea = Concentration.FromMillimolesPerLiter(18),
            Creatinine = plasma.Creatinine * 0.9,
            Glucose = Concentration.FromMillimolesPerLiter(20),
            Sodium = Concentration.FromMillimolesPerLiter(134),
        };
        var dwell = new Dwell(DialysisSolution.OfGlucose(glucose), Volume.FromMilliliters(2000), TimeSpan.FromMinutes(480), residual);
        var options = new DwellOptions { Panel = SolutePanel.Full, Integration = new() { RelativeTolerance = tolerance } };
        return DwellSimulation.Run(Patient.Example with { Plasma = plasma }, membrane, dwell, options);
    }

    private static void Check(IReadOnlyDictionary<string, string> row, string column, double found)
    {
        var expected = row.Number(column);
        Assert.True(
            Math.Abs(found - expected) <= RelativeTolerance * Math.Abs(expected) + 1e-12,
            $"{row["case"]} at {row["time_min"]} min, {column}: found {found:R}, golden {expected:R}, relative {(found - expected) / expected:E1}");
    }
}
