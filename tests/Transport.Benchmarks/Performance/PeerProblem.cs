using Transport.Analysis;

namespace Transport.Benchmarks;

/// <summary>What all solvers are given: a 4-h dwell, eight solutes, a thousand seeded membranes; and how far from the solution an answer is.</summary>
internal sealed class PeerProblem
{
    public const double Target = 1e-6;
    public const int Members = 1000;

    /// <summary>What has passed the small pores may come back and pass through zero: its error is relative to this at least, mL.</summary>
    public const double SmallPoreFloor = 10;

    private const int CoefficientHead = 13;

    public static readonly TimeSpan[] Times = [.. new[] { 15, 30, 60, 90, 120, 180, 240 }.Select(minutes => TimeSpan.FromMinutes(minutes))];

    public static readonly SolutePanel Panel = SolutePanel.Of(
        Solutes.Phosphate, Solutes.Beta2Microglobulin, Solutes.Albumin, Solutes.ImmunoglobulinG);

    private static readonly PlasmaComposition Plasma = PlasmaComposition.Typical with
    {
        Others = PlasmaComposition.Typical.Others.Add(Solutes.Phosphate, Concentration.FromMillimolesPerLiter(1.8)),
    };

    public PeerProblem(bool solve = true)
    {
        Patient = Patient.Example with { Plasma = Plasma };
        Ensemble = PopulationPrior.IncidentAdults().ToEnsemble(Patient.BodySurface, Members, seed: 20);
        Dwells =
        [
            .. DialysisSolution.UsualGlucose.Select(solution => new Dwell(
                solution, Volume.FromLiters(2), TimeSpan.FromHours(4), ResidualFluid.Used(Volume.FromMilliliters(250), Plasma))),
        ];
        Membranes = [.. Enumerable.Range(0, Members).Select(i => Ensemble[i])];
        References = !solve ? [] : [.. Enumerable.Range(0, Members).Select(i => Observed(Run(i, 1e-13)))];
    }

    public Patient Patient { get; }

    public MembraneEnsemble Ensemble { get; }

    public Dwell[] Dwells { get; }

    public ThreePoreMembrane[] Membranes { get; }

    public double[][] References { get; }

    public Dwell DwellOf(int member) => Dwells[member % Dwells.Length];

    public DwellCourse Run(int member, double tolerance) => DwellSimulation.Run(
        Patient, Membranes[member], DwellOf(member), new() { Panel = Panel, Integration = new() { RelativeTolerance = tolerance } });

    /// <summary>Volume, concentrations over plasma and pore volumes at the times.</summary>
    public static double[] Observed(DwellCourse course) =>
    [
        .. Times.SelectMany(time => (double[])
        [
            course.VolumeAt(time).Milliliters,
            .. Panel.Solutes.Select(solute => course.DialysateToPlasmaAt(solute, time)),
            course.PoreVolumesAt(time).Ultrasmall.Milliliters,
            course.PoreVolumesAt(time).Small.Milliliters,
            course.PoreVolumesAt(time).Large.Milliliters,
        ]),
    ];

    /// <summary>The same from states of amounts.</summary>
    public double[] Observed(double[] states)
    {
        var observed = (double[])states.Clone();
        var size = Panel.Solutes.Count + 4;
        var plasma = PlasmaLevels();
        for (var k = 0; k < Times.Length; k++)
        {
            for (var i = 0; i < plasma.Length; i++)
            {
                observed[k * size + 1 + i] /= observed[k * size] * plasma[i];
            }
        }

        return observed;
    }

    /// <summary>The same from a batch.</summary>
    public double[] Observed(DwellSamples samples, int dwell)
    {
        var plasma = PlasmaLevels();
        return
        [
            .. Times.SelectMany((_, k) => (double[])
            [
                samples.VolumesMilliliters(k)[dwell],
                .. Panel.Solutes.Select((solute, i) => samples.ConcentrationsMillimolesPerLiter(solute, k)[dwell] / plasma[i]),
                samples.UltrasmallPoreMilliliters(k)[dwell],
                samples.SmallPoreMilliliters(k)[dwell],
                samples.LargePoreMilliliters(k)[dwell],
            ]),
        ];
    }

    /// <summary>The largest relative error of any number at any time of any dwell.</summary>
    public double WorstError(Func<int, double[]> observed, int members = Members)
    {
        var floors = Floors();
        return Enumerable.Range(0, members).Max(i => observed(i).Select((found, k) => Error(found, References[i][k], floors[k % floors.Length])).Max());

        static double Error(double found, double exact, double floor) => Math.Abs(found - exact) / Math.Max(Math.Abs(exact), floor);
    }

    /// <summary>The size below which an error counts as if the number had it, in the order of a sample.</summary>
    public static double[] Floors() => [.. new double[Panel.Solutes.Count + 2], SmallPoreFloor, 0];

    /// <summary>The loosest tolerance, on a ladder of small steps, that meets the target, and the error that it leaves.</summary>
    public static (double Tolerance, double Error) Tune(Func<double, double> worst)
    {
        for (var tolerance = 1e-3; tolerance > 1e-13; tolerance /= 1.2)
        {
            if (worst(tolerance) is var error and <= Target)
            {
                return (tolerance, error);
            }
        }

        throw new InvalidOperationException("No tolerance meets the target.");
    }

    public double[] Start(int member)
    {
        var dwell = DwellOf(member);
        var (fill, residual) = (dwell.Fill.Milliliters, dwell.Residual.Volume.Milliliters);
        double[] fresh = Fresh(dwell.Solution);
        double[] used =
        [
            .. Small(dwell.Residual.Urea, dwell.Residual.Creatinine, dwell.Residual.Glucose, dwell.Residual.Sodium),
            dwell.Residual.Others[Solutes.Phosphate].MillimolesPerLiter, 0.1, 0.01, 0.005,
        ];
        return [fill + residual, .. fresh.Zip(used, (f, u) => fill * f + residual * u), 0, 0, 0];
    }

    public double[] Scale()
    {
        var reference = Ensemble.Center.ReferenceVolume.Milliliters;
        return [0.01 * reference, .. PlasmaLevels().Select(p => 1e-3 * reference * p), 1e-3 * reference, 1e-3 * reference, 1e-5 * reference];
    }

    /// <summary>A membrane's coefficients as the peers want them, formed from the published equations and not by the library's kinetics.</summary>
    public double[] Coefficients(int member, DialysisSolution? inflow = null, double inflowRate = 0, double outflow = 0)
    {
        const double rt = 19.34;
        var membrane = Membranes[member];
        var pores = membrane.Pores;
        var n = Panel.Solutes.Count;
        var numbers = new double[CoefficientHead + 11 * n];
        var lps = membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury;
        var oncotic = membrane.OncoticPressureDifference.MillimetersOfMercury;
        var perVolume = 1 / membrane.VolumePerPressure!.Value.Milliliters;
        double[] head =
        [
            lps * pores.UltrasmallFraction, lps * pores.SmallFraction, lps * pores.LargeFraction,
            oncotic, oncotic * Sigma(Solutes.Albumin, pores.SmallRadiusAngstrom), oncotic * Sigma(Solutes.Albumin, pores.LargeRadiusAngstrom),
            membrane.LymphaticRemoval.MillilitersPerMinute,
            membrane.HydrostaticPressureDifference.MillimetersOfMercury + membrane.ReferenceVolume.Milliliters * perVolume, perVolume,
            membrane.TransientAmplitude, 1 / membrane.TransientTime.TotalMinutes, inflowRate, outflow,
        ];
        head.CopyTo(numbers, 0);
        var fresh = Fresh(inflow ?? DialysisSolution.Glucose136);
        var plasma = PlasmaLevels();
        var creatinine = Permeability(Solutes.Creatinine, small: true) + Permeability(Solutes.Creatinine, small: false);
        for (var i = 0; i < n; i++)
        {
            var solute = Panel.Solutes[i];
            var large = Permeability(solute, small: false);
            var small = Permeability(solute, small: true);
            small = solute == Solutes.Glucose ? small * membrane.GlucosePermeabilityScale
                : solute == Solutes.Urea && membrane.UreaToCreatininePermeability is { } ratio ? ratio * creatinine - large
                : solute == Solutes.Sodium ? membrane.SodiumPermeability.MillilitersPerMinute - large
                : membrane.Permeabilities.TryGetValue(solute, out var rule) ? rule.ToCreatinineRatio!.Value * creatinine - large
                : small;
            var (sigma_S, sigma_L) = (Sigma(solute, pores.SmallRadiusAngstrom), Sigma(solute, pores.LargeRadiusAngstrom));
            var pull = rt * (solute == Solutes.Sodium ? 2 : solute == Solutes.Urea || solute == Solutes.Glucose ? 1 : 0);
            double[] row = [plasma[i], fresh[i], 1 - sigma_S, small + 1e-30, 1 - sigma_L, large + 1e-30, pull, pull * sigma_S, pull * sigma_L];
            for (var r = 0; r < row.Length; r++)
            {
                numbers[CoefficientHead + r * n + i] = row[r];
            }

            numbers[CoefficientHead + 9 * n + i] = 0.5 / (small + 1e-30);
            numbers[CoefficientHead + 10 * n + i] = 0.5 / (large + 1e-30);
        }

        return numbers;

        double Sigma(Solute solute, double radius) => Hindrance.ReflectionCoefficient(solute.RadiusAngstrom / radius, membrane.HindranceForm);

        double Permeability(Solute solute, bool small)
        {
            var (own, other) = small ? (pores.SmallRadiusAngstrom, pores.LargeRadiusAngstrom) : (pores.LargeRadiusAngstrom, pores.SmallRadiusAngstrom);
            var (fraction, otherFraction) = small ? (pores.SmallFraction, pores.LargeFraction) : (pores.LargeFraction, pores.SmallFraction);
            var (area, otherArea) = (fraction / (own * own), otherFraction / (other * other));
            var diffusion = 1.380649e-16 * 310.15 / (6 * Math.PI * 0.0070 * solute.RadiusAngstrom * 1e-8);
            return area / (area + otherArea) * Hindrance.DiffusionFactor(solute.RadiusAngstrom / own, membrane.HindranceForm)
                * 60 * diffusion * membrane.DiffusionArea.Centimeters;
        }
    }

    private static double[] Fresh(DialysisSolution solution) =>
        [.. Small(default, default, solution.Glucose, solution.Sodium), 0, 0, 0, 0];

    private static double[] PlasmaLevels() =>
        [.. Small(Plasma.Urea, Plasma.Creatinine, Plasma.Glucose, Plasma.Sodium), Plasma.Others[Solutes.Phosphate].MillimolesPerLiter, 1, 1, 1];

    private static double[] Small(Concentration urea, Concentration creatinine, Concentration glucose, Concentration sodium) =>
        [urea.MillimolesPerLiter, creatinine.MillimolesPerLiter, glucose.MillimolesPerLiter, sodium.MillimolesPerLiter];
}
