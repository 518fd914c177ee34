using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>A person who does not exist, the membrane that nobody can see, and the sheet that a clinic would write of it: with errors.</summary>
/// <param name="Membrane">The membrane as drawn.</param>
/// <param name="Test">What is written down.</param>
/// <param name="ResidualVolume">The residual volume that nobody measured.</param>
/// <param name="Random">The person's own stream, for what is drawn after the test.</param>
public sealed record VirtualTest(ThreePoreMembrane Membrane, EquilibrationTest Test, Volume ResidualVolume, RandomSource Random)
{
    /// <summary>What the data were made with: that membrane, or one barrier in its place.</summary>
    public required IMembrane Truth { get; init; }

    private static readonly int[] SampleMinutes = [0, 120, 240];

    /// <summary>Person number <paramref name="index"/> of a study: the same whatever other persons are asked for.</summary>
    /// <param name="seed">The study's seed.</param>
    /// <param name="index">Which person.</param>
    /// <param name="solution">The solution of the test.</param>
    /// <param name="world">How the world differs from the model that will be fitted.</param>
    public static VirtualTest Of(int seed, int index, DialysisSolution solution, World world)
    {
        var random = new MersenneTwister(unchecked(seed * 1_000_003 + index));
        var patient = Patient.Example;
        var prior = PopulationPrior.IncidentAdults();
        var drawn = prior.ToEnsemble(patient.BodySurface, 1, unchecked(seed * 1_000_003 + index) ^ 0x7E57)[0];
        var membrane = world == World.FasterLymph ? drawn with { LymphaticRemoval = FlowRate.FromMillilitersPerMinute(1) } : drawn;
        IMembrane truth = world == World.Lumped ? OneBarrier(drawn, prior, patient) : membrane;
        var residual = ObservedExchange.TypicalResidual(patient) * Factor(0.3);
        var fill = Volume.FromLiters(2);
        var duration = TimeSpan.FromHours(4);
        var course = DwellSimulation.Run(patient, truth, new(solution, fill, duration, ResidualFluid.Used(residual, patient.Plasma)));

        var errors = AssayErrors.Default;
        var plasma = new PlasmaSample(TimeSpan.FromHours(2))
        {
            Creatinine = patient.Plasma.Creatinine * Noise(errors.CreatinineVariation),
            Urea = patient.Plasma.Urea * Noise(errors.UreaVariation),
            Glucose = patient.Plasma.Glucose * Noise(errors.GlucoseVariation),
            Sodium = patient.Plasma.Sodium * Noise(errors.SodiumVariation),
        };
        var dialysate = SampleMinutes.Select(minutes => TimeSpan.FromMinutes(minutes)).Select(time => new DialysateSample(time)
        {
            Creatinine = course.DialysateAt(Solutes.Creatinine, time) * (Noise(errors.CreatinineVariation) * Sampling(time)) + errors.CreatinineFloor * Floor(),
            Urea = course.DialysateAt(Solutes.Urea, time) * (Noise(errors.UreaVariation) * Sampling(time)) + errors.UreaFloor * Floor(),
            Glucose = course.DialysateAt(Solutes.Glucose, time) * (Noise(errors.GlucoseVariation) * Sampling(time)) + errors.GlucoseFloor * Floor(),
            Sodium = course.DialysateAt(Solutes.Sodium, time) * Noise(errors.SodiumVariation),
        }).ToArray();
        var drained = fill + course.NetUltrafiltrationAt(duration) + errors.VolumeDeviation * Error();
        return new(
            membrane,
            new()
            {
                Patient = patient with
                {
                    Plasma = new(plasma.Urea.Value, plasma.Creatinine.Value, plasma.Glucose.Value, plasma.Sodium.Value),
                },
                Solution = solution,
                InstilledVolume = fill,
                FillBasis = FillBasis.Measured,
                DrainedVolume = drained,
                Dwell = duration,
                CreatinineAssay = new(CreatinineMethod.Enzymatic, null),
                Plasma = [plasma],
                Dialysate = dialysate,
            },
            residual,
            random)
        {
            Truth = truth,
        };

        double Factor(double logDeviation) => Math.Exp(Normal.Sample(random, 0, logDeviation));

        double Noise(double variation) => Math.Max(0.5, 1 + variation * Error());

        // At most what leaves a concentration positive.
        double Floor() => Math.Clamp(Error(), -3, 3);

        double Sampling(TimeSpan time) => time > TimeSpan.Zero ? Noise(errors.SamplingVariation) : 1;

        // Three degrees of freedom, at the same standard deviation.
        double Error() => world == World.HeavyTails ? StudentT.Sample(random, 0, 1, 3) / Math.Sqrt(3) : Normal.Sample(random, 0, 1);
    }

    // One barrier whose numbers differ between people as far as those of the pores do.
    private static LumpedMembrane OneBarrier(ThreePoreMembrane drawn, PopulationPrior prior, Patient patient)
    {
        var center = prior.Center.ScaledTo(patient.BodySurface);
        var typical = LumpedMembrane.Typical.ScaledTo(patient.BodySurface);
        var area = drawn.DiffusionArea / center.DiffusionArea;
        var conductance = drawn.OsmoticConductanceToGlucose / center.OsmoticConductanceToGlucose;
        return typical with
        {
            MassTransfer = typical.MassTransfer.ToImmutableDictionary(pair => pair.Key, pair => pair.Value * (
                pair.Key == Solutes.Glucose ? area * drawn.GlucosePermeabilityScale / center.GlucosePermeabilityScale
                : pair.Key == Solutes.Sodium ? drawn.SodiumPermeability / center.SodiumPermeability
                : area)),
            OsmoticConductanceToGlucose = typical.OsmoticConductanceToGlucose * conductance,
            OsmoticConductanceToSodium = typical.OsmoticConductanceToSodium * conductance,
            FluidAbsorption = typical.FluidAbsorption * (drawn.LymphaticRemoval / center.LymphaticRemoval),
        };
    }
}
