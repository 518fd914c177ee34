using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Analysis;

/// <summary>The sheet that a clinic would write of a membrane that nobody sees: simulated, with the errors of laboratory, scale and residual volume.</summary>
public static class SimulatedTest
{
    /// <summary>One test.</summary>
    /// <param name="patient">Size and true plasma.</param>
    /// <param name="membrane">The truth, at the patient's size.</param>
    /// <param name="seed">Seed of all errors.</param>
    /// <param name="options">How.</param>
    /// <exception cref="IntegrationException">The dwell could not be integrated.</exception>
    public static EquilibrationTest Run(Patient patient, ThreePoreMembrane membrane, int seed, SimulatedTestOptions? options = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(membrane);
        return Run(patient, membrane, new MersenneTwister(seed), options ?? SimulatedTestOptions.Default).Test;
    }

    /// <summary>The same from a stream, which goes on after it; with the residual volume that nobody measured.</summary>
    internal static (EquilibrationTest Test, Volume Residual) Run(Patient patient, ThreePoreMembrane membrane, RandomSource random, SimulatedTestOptions options)
    {
        var residual = ObservedExchange.TypicalResidual(patient) * Math.Exp(Normal.Sample(random, 0, options.ResidualLogDeviation));
        var course = DwellSimulation.Run(
            patient, membrane, new(options.Solution, options.Fill, options.Duration, ResidualFluid.Used(residual, patient.Plasma)));
        var errors = options.Errors;
        var plasma = new PlasmaSample(options.Duration / 2)
        {
            Creatinine = patient.Plasma.Creatinine * Noise(errors.CreatinineVariation),
            Urea = patient.Plasma.Urea * Noise(errors.UreaVariation),
            Glucose = patient.Plasma.Glucose * Noise(errors.GlucoseVariation),
            Sodium = patient.Plasma.Sodium * Noise(errors.SodiumVariation),
        };
        var dialysate = options.SampleTimes.Select(time => new DialysateSample(time)
        {
            Creatinine = course.DialysateAt(Solutes.Creatinine, time) * (Noise(errors.CreatinineVariation) * Sampling(time)) + errors.CreatinineFloor * Floor(),
            Urea = course.DialysateAt(Solutes.Urea, time) * (Noise(errors.UreaVariation) * Sampling(time)) + errors.UreaFloor * Floor(),
            Glucose = course.DialysateAt(Solutes.Glucose, time) * (Noise(errors.GlucoseVariation) * Sampling(time)) + errors.GlucoseFloor * Floor(),
            Sodium = course.DialysateAt(Solutes.Sodium, time) * Noise(errors.SodiumVariation),
        }).ToArray();
        var drained = options.Fill + course.NetUltrafiltrationAt(options.Duration) + errors.VolumeDeviation * Error();
        return (
            new()
            {
                Patient = patient with { Plasma = new(plasma.Urea.Value, plasma.Creatinine.Value, plasma.Glucose.Value, plasma.Sodium.Value) },
                Solution = options.Solution,
                InstilledVolume = options.Fill,
                FillBasis = FillBasis.Measured,
                DrainedVolume = drained,
                Dwell = options.Duration,
                CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
                Plasma = [plasma],
                Dialysate = dialysate,
            },
            residual);

        double Noise(double variation) => Math.Max(0.5, 1 + variation * Error());

        // At most what leaves a concentration positive.
        double Floor() => Math.Clamp(Error(), -3, 3);

        double Sampling(TimeSpan time) => time > TimeSpan.Zero ? Noise(errors.SamplingVariation) : 1;

        double Error() => options.TailDegreesOfFreedom is { } freedom
            ? StudentT.Sample(random, 0, 1, freedom) / Math.Sqrt(freedom / (freedom - 2))
            : Normal.Sample(random, 0, 1);
    }
}
