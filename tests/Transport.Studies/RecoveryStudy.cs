using System.Globalization;
using System.Text;
using MathNet.Numerics.Distributions;

namespace Transport.Studies;

/// <summary>
/// Simulate and recover: virtual people are tested at 2.27 % or 3.86 %, fitted from the sheet alone, and asked where their true membrane and their next
/// dwell lie in what the fit says.
/// </summary>
/// <param name="world">How the world differs from the model.</param>
/// <param name="isStrong">Whether the test is made with 3.86 %.</param>
public sealed class RecoveryStudy(World world, bool isStrong = false) : Study<RecoveryRow>
{
    private const int DrawsPerChain = 600;
    private const int Draws = 400;
    private const int Seed = 1987;
    private static readonly double[] Coverages = [0.5, 0.8, 0.9];
    private const int Bins = 20;

    private static readonly (string Name, Func<RecoveryRow, double?> Place, Func<RecoveryRow, double?> LogError)[] Parameters =
    [
        ("A0/Δx", row => row.DiffusionAreaPlace, row => row.DiffusionAreaLogError),
        ("glucose scale", row => row.GlucoseScalePlace, row => row.GlucoseScaleLogError),
        ("osmotic conductance", row => row.OsmoticConductancePlace, row => row.OsmoticConductanceLogError),
        ("F0", row => row.TransientPlace, row => row.TransientLogError),
        ("lymphatic removal", row => row.LymphPlace, row => row.LymphLogError),
        ("share of ultrasmall pores", row => row.UltrasmallPlace, row => row.UltrasmallLogError),
        ("sodium permeability", row => row.SodiumPermeabilityPlace, row => row.SodiumPermeabilityLogError),
    ];

    /// <summary>The world as it is modelled, tested at two strengths, and three other worlds.</summary>
    public static new IReadOnlyList<RecoveryStudy> All { get; } =
    [
        new(World.AsModelled), new(World.AsModelled, isStrong: true), new(World.FasterLymph), new(World.HeavyTails), new(World.Lumped),
    ];

    /// <inheritdoc/>
    public override string Name => world switch
    {
        World.AsModelled => isStrong ? "recovery-strong-test" : "recovery",
        World.FasterLymph => "recovery-faster-lymph",
        World.HeavyTails => "recovery-heavy-tails",
        _ => "recovery-lumped",
    };

    private DialysisSolution Tested => isStrong ? DialysisSolution.Glucose386 : DialysisSolution.Glucose227;

    private DialysisSolution Other => isStrong ? DialysisSolution.Glucose227 : DialysisSolution.Glucose386;

    /// <inheritdoc/>
    public override int Count => 1000;

    /// <inheritdoc/>
    public override RecoveryRow Row(int number)
    {
        var person = VirtualTest.Of(Seed, number, Tested, world);
        var (truth, test, random) = (person.Truth, person.Test, person.Random);
        var fit = MembraneFit.Run(test);
        var posterior = MembraneSampling.Run(fit, new() { DrawsPerChain = DrawsPerChain, EffectiveDraws = 0, MostDrawsPerChain = DrawsPerChain, Seed = unchecked(Seed + 7919 * number) });
        var ensemble = posterior.ToEnsemble(Draws);
        var size = fit.Patient.SurfaceFactor;
        var curves = DwellCurves.Run(fit.Patient, ensemble, new()
        {
            Solutions = [Tested, Other],
            Longest = test.Dwell,
            Tested = Tested,
            Layers = DoubtLayers.OfSingleNight,
        });
        return new()
        {
            Person = number,
            Status = fit.Status,
            DiffusionAreaPlace = Place(MembraneParameter.DiffusionArea),
            GlucoseScalePlace = Place(MembraneParameter.GlucosePermeabilityScale),
            OsmoticConductancePlace = Place(MembraneParameter.OsmoticConductance)!.Value,
            TransientPlace = Place(MembraneParameter.TransientAmplitude),
            LymphPlace = Place(MembraneParameter.LymphaticRemoval),
            UltrasmallPlace = Place(MembraneParameter.UltrasmallFraction),
            SodiumPermeabilityPlace = Place(MembraneParameter.SodiumPermeability),
            DiffusionAreaLogError = LogError(MembraneParameter.DiffusionArea),
            GlucoseScaleLogError = LogError(MembraneParameter.GlucosePermeabilityScale),
            OsmoticConductanceLogError = LogError(MembraneParameter.OsmoticConductance)!.Value,
            TransientLogError = LogError(MembraneParameter.TransientAmplitude),
            LymphLogError = LogError(MembraneParameter.LymphaticRemoval),
            UltrasmallLogError = LogError(MembraneParameter.UltrasmallFraction),
            SodiumPermeabilityLogError = LogError(MembraneParameter.SodiumPermeability),
            TestedMilliliters = OneDwell(Tested),
            TestedLow = Round(curves[0].NetUltrafiltration.Low[^1]),
            TestedHigh = Round(curves[0].NetUltrafiltration.High[^1]),
            OtherMilliliters = OneDwell(Other),
            OtherLow = Round(curves[1].NetUltrafiltration.Low[^1]),
            OtherHigh = Round(curves[1].NetUltrafiltration.High[^1]),
        };

        double? Place(MembraneParameter parameter)
        {
            var draws = posterior.Draws(parameter);
            return TrueValue(parameter) is { } known ? Round((draws.Count(draw => draw < known) + 0.5) / (draws.Length + 1)) : null;
        }

        double? LogError(MembraneParameter parameter) => TrueValue(parameter) is { } known ? Round(Math.Log(fit[parameter].Value / known)) : null;

        // In the units in which a fit prints it. Of one barrier the conductance alone is the same thing.
        double? TrueValue(MembraneParameter parameter) => (parameter, truth) switch
        {
            (MembraneParameter.OsmoticConductance, _) => truth.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury / size,
            (MembraneParameter.DiffusionArea, ThreePoreMembrane pores) => pores.DiffusionArea.Centimeters / size,
            (MembraneParameter.GlucosePermeabilityScale, ThreePoreMembrane pores) => pores.GlucosePermeabilityScale,
            (MembraneParameter.TransientAmplitude, ThreePoreMembrane pores) => pores.TransientAmplitude,
            (MembraneParameter.LymphaticRemoval, ThreePoreMembrane pores) => pores.LymphaticRemoval.MillilitersPerMinute / size,
            (MembraneParameter.UltrasmallFraction, ThreePoreMembrane pores) => 100 * pores.Pores.UltrasmallFraction,
            (MembraneParameter.SodiumPermeability, ThreePoreMembrane pores) => pores.SodiumPermeability.MillilitersPerMinute / size,
            _ => null,
        };

        // The truth of another day: the residual volume that the person has, the strength's discrepancy, the night.
        double OneDwell(DialysisSolution solution)
        {
            var discrepancy = ModelDiscrepancies.MeanIncidentAdult.Of(solution, Tested);
            var dwell = new Dwell(solution, test.InstilledVolume, test.Dwell, ResidualFluid.Used(person.ResidualVolume, Patient.Example.Plasma));
            var model = DwellSimulation.Run(Patient.Example, truth, dwell).NetUltrafiltrationAt(test.Dwell);
            var mean = model * discrepancy.Gain + discrepancy.Offset + discrepancy.Deviation * Normal.Sample(random, 0, 1);
            return Round((mean + NightVariation.Starting.DeviationOf(mean) * Normal.Sample(random, 0, 1)).Milliliters);
        }
    }

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<RecoveryRow> rows)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Recovery of {rows.Count} virtual people: {Description}

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}`; seed {Seed}; the rows are in `{Name}.csv`.
            Each person's membrane is drawn from the prior, tested for 4 h at {Percent(Tested)} (samples at 0, 2 and 4 h, sodium in all of them, drained
            volume, errors of `AssayErrors.Default`, a residual volume that nobody measured), fitted from the sheet, and drawn from the posterior (2400 draws). {Expectation}

            | parameter | 50 % interval holds | 80 % | 90 % | mean place | ranks even (p) | bias of the logarithm | RMSE |
            |---|---|---|---|---|---|---|---|

            """);
        foreach (var (name, place, logError) in Parameters)
        {
            double[] places = Known(rows, place);
            if (places.Length == 0)
            {
                page.Append(CultureInfo.InvariantCulture, $"| {name} | no such number in one barrier | | | | | | |\n");
                continue;
            }

            var errors = Known(rows, logError);
            var shares = Coverages.Select(coverage => places.Average(at => Math.Abs(at - 0.5) < coverage / 2 ? 1.0 : 0));
            page.Append(CultureInfo.InvariantCulture, $"| {name} | {string.Join(" | ", shares.Select(Percent))} | {places.Average():0.000} | {Uniformity.ChiSquareProbability(Counts(places)):0.000} | ")
                .Append(CultureInfo.InvariantCulture, $"{Math.Round(errors.Average(), 3) + 0.0:+0.000;−0.000} | {Math.Sqrt(errors.Average(error => error * error)):0.000} |\n");
        }

        var tested = rows.Average(row => row.TestedLow <= row.TestedMilliliters && row.TestedMilliliters <= row.TestedHigh ? 1.0 : 0);
        var other = rows.Average(row => row.OtherLow <= row.OtherMilliliters && row.OtherMilliliters <= row.OtherHigh ? 1.0 : 0);
        page.Append(CultureInfo.InvariantCulture, $"""

            Ultrafiltration of one later dwell of 4 h, with the night's noise, inside its 90 % band: {Percent(tested)} at the tested {Percent(Tested)},
            {Percent(other)} at {Percent(Other)} (with the discrepancy of a strength that was not tested). With {rows.Count} people a share of 90 % is known to ±{200 * Math.Sqrt(0.09 / rows.Count):0.0} %
            (two binomial standard deviations).

            ![Where the truth lies among the draws]({Name}.svg)

            Status: {string.Join(", ", rows.GroupBy(row => row.Status).OrderBy(group => group.Key).Select(group => $"{group.Key} {group.Count()}"))}.

            """);
        return page.ToString();
    }

    /// <inheritdoc/>
    protected override Figure? Picture(IReadOnlyList<RecoveryRow> rows)
    {
        var shown = Parameters.Select(parameter => (parameter.Name, Places: Known(rows, parameter.Place))).Where(parameter => parameter.Places.Length > 0).ToList();
        var (low, high) = Uniformity.Tolerance(shown[0].Places.Length, 1.0 / Bins, 0.95);
        double[] edges = [.. Enumerable.Range(0, Bins + 1).Select(b => (double)b / Bins)];
        return new(
            $"Where the truth lies among the draws: {Description}",
            $"People in each twentieth. Level: the draws are spread as the truth is. High in the middle: too wide; at both ends: too sure; at one end: off to one side. Shaded: where 95 of 100 bins lie if the fit is calibrated. {rows.Count} virtual people, tested at {Percent(Tested)}.",
            string.Join(" ", shown.Select(parameter =>
            {
                var counts = Counts(parameter.Places);
                return FormattableString.Invariant($"{parameter.Name}: {counts.Count(count => count < low || count > high)} of {Bins} bins outside the shaded range; p {Uniformity.ChiSquareProbability(counts):0.000}.");
            })),
            [.. shown.Select(parameter => new Panel(new("share of the draws below the truth", "") { Range = new(0, 1) }, new("people", "") { Range = new(0, 2.4 * parameter.Places.Length / Bins) })
            {
                Title = parameter.Name,
                Bands = [new("95 of 100 bins", [0, 1], [low, low], [high, high])],
                Series = [Steps(Counts(parameter.Places), edges)],
            })])
        {
            Columns = 2,
            Key = KeyPlacement.None,
        };
    }

    private static Series Steps(IReadOnlyList<int> counts, double[] edges) => new(
        "people", [.. counts.SelectMany((_, b) => new[] { edges[b], edges[b + 1] })], [.. counts.SelectMany(count => new double[] { count, count })]);

    private static int[] Counts(double[] places)
    {
        var counts = new int[Bins];
        foreach (var place in places)
        {
            counts[(int)(Bins * place)]++;
        }

        return counts;
    }

    private static double[] Known(IReadOnlyList<RecoveryRow> rows, Func<RecoveryRow, double?> read) => [.. rows.Select(read).OfType<double>()];

    private string Description => world switch
    {
        World.AsModelled => $"the world is as the model says{(isStrong ? ", tested with the strongest glucose" : "")}",
        World.FasterLymph => "in truth 1 mL/min are lost to the lymph",
        World.HeavyTails => "the errors have heavy tails",
        _ => "in truth there is one barrier without pores",
    };

    private string Expectation => world switch
    {
        World.AsModelled => "Here the intervals must hold what they promise; a 90 % interval holds 87 to 93 %.",
        World.Lumped => "Here the model is wrong: the truth is a `LumpedMembrane`, whose numbers differ between people as far as those of the pores do. Its conductance is the only one that is the same thing. What the intervals hold is reported, not required.",
        _ => "Here the model is wrong, so what the intervals hold is reported, not required.",
    };

    private static string Percent(double share) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.0} %");

    private static string Percent(DialysisSolution solution) => solution.Name.Replace("glucose ", "", StringComparison.Ordinal);

    private static double Round(double value) => Math.Round(value, 4);
}
