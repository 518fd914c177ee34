using System.Collections.Immutable;
using System.Globalization;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace Transport.Studies;

/// <summary>
/// Random search problems, probability goals included, answered twice: by the search, and by asking every regimen of the grid in every draw of the membrane
/// without leaving anything out.
/// </summary>
public sealed class AgreementStudy : Study<AgreementRow>
{
    private const int Seed = 4711;
    private const int Draws = 100;

    /// <inheritdoc/>
    public override string Name => "search-agreement";

    /// <inheritdoc/>
    public override int Count => 200;

    /// <inheritdoc/>
    public override AgreementRow Row(int number)
    {
        var (patient, ensemble, goals, space) = Problem(number);
        var options = new RegimenSearchOptions { EnsembleMembers = Draws, MostOptions = int.MaxValue, Tested = DialysisSolution.Glucose386, Workers = 1 };
        var front = RegimenSearch.Run(patient, ensemble, goals, space, options: options);
        var brute = BruteSearch.Run(patient, ensemble, goals, space, options);
        return new()
        {
            Problem = number,
            Candidates = space.Count,
            Draws = Draws,
            Bounds = string.Join("; ", goals.Bounds),
            Feasible = brute.Feasible,
            Unbeaten = brute.Unbeaten,
            Offered = front.NothingMeets is null ? front.Options.Length : 0,
            Agrees = front.NothingMeets is null
                ? brute.Offered.SequenceEqual(front.Options.Select(option => option.Regimen))
                : brute.Feasible == 0,
            Unmet = front.NothingMeets?.Goal ?? "",
        };
    }

    /// <inheritdoc/>
    protected override string Page(IReadOnlyList<AgreementRow> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        int Median(Func<AgreementRow, int> read) => rows.Where(row => row.Feasible > 0).Select(read).Order().ElementAt(rows.Count(row => row.Feasible > 0) / 2);
        return string.Create(CultureInfo.InvariantCulture, $"""
            # The search against brute force on {rows.Count} random problems

            Made by `dotnet run -c Release --project tests/Transport.Studies -- {Name}`; seed {Seed}; the rows are in `{Name}.csv`.
            Patients, membranes, grids and goals are drawn at random (invented). Brute force asks every regimen of the grid in every one of {Draws} draws of
            the membrane, simulates phase after phase whatever keeps its bounds, and compares each with each. The search leaves out what it can show to be out.
            Draws are evaluated by shared exchanges, each with its own; how exact those are is tested against the simulation elsewhere. A regimen that lies nearer to a bound than
            they are exact is simulated phase after phase in every draw, in both, so that both decide by the same number.

            | | |
            |---|---|
            | problems | {rows.Count} |
            | regimens in a grid | {rows.Min(row => row.Candidates)} to {rows.Max(row => row.Candidates)} |
            | problems that something meets | {rows.Count(row => row.Feasible > 0)} |
            | regimens that meet everything, median of those | {Median(row => row.Feasible)} |
            | unbeaten of them, median | {Median(row => row.Unbeaten)} |
            | problems in which both agree, regimen by regimen | {rows.Count(row => row.Agrees)} |

            """);
    }

    // About as wide as a posterior: LpS, A0/Δx, glucose scale and F0 around the mean incident adult. Drawn here, so that the problems stay what they are.
    private static MembraneEnsemble Ensemble(Patient patient, int seed)
    {
        var center = ReferenceMembranes.MeanIncidentAdult().ScaledTo(patient.BodySurface);
        var random = new MersenneTwister(seed);
        return new(
            EnsembleSource.Prior,
            seed,
            center,
            Draw(center.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury, 0.43 / 3),
            Draw(center.DiffusionArea.Centimeters, 0.36 / 3),
            Draw(center.GlucosePermeabilityScale, 0.2 / 3),
            Draw(center.TransientAmplitude, 0.5));

        ImmutableArray<double> Draw(double median, double logDeviation)
        {
            var values = new double[Draws];
            Normal.Samples(random, values, 0, logDeviation);
            return [.. values.Select(value => median * Math.Exp(value))];
        }
    }

    private static (Patient Patient, MembraneEnsemble Ensemble, RegimenGoals Goals, RegimenSpace Space) Problem(int number)
    {
        var random = new MersenneTwister(unchecked(Seed * 1_000_003 + number));
        var patient = Patient.Example with
        {
            ResidualFunction = Pick(0, 1, 2) switch
            {
                0 => ResidualFunction.None,
                1 => new(Clearance.FromMillilitersPerMinute(1), Clearance.FromMillilitersPerMinute(2), Volume.FromMilliliters(300)),
                _ => new(Clearance.FromMillilitersPerMinute(3), Clearance.FromMillilitersPerMinute(5), Volume.FromMilliliters(900)),
            },
        };

        var ensemble = Ensemble(patient, number);
        var floor = Pick(0.0, 200, 400, 700);
        var width = Pick(500.0, 800, 1200);
        var goals = new RegimenGoals(FluidTarget.Between(Volume.FromMilliliters(floor), Volume.FromMilliliters(floor + width)))
        {
            Clearance = Pick(true, false) ? ClearanceGoal.Usual : null,
            LongestNight = TimeSpan.FromHours(Pick(9, 10)),
            MostStrongestExchanges = Pick<int?>(null, 0, 2),
            Bounds = [.. Bounds(floor).Where(_ => random.NextDouble() < 0.6).Take(3)],
            Objectives = Pick(true, false) ? [.. RegimenObjective.Usual] : [RegimenObjective.Least(RegimenMeasure.GlucoseAbsorbed)],
        };
        if (goals.Bounds.IsEmpty)
        {
            goals = goals with { Bounds = [Bounds(floor).First()] };
        }

        var fills = Enumerable.Range(0, 8).Select(_ => 1400 + 100 * random.Next(0, 12)).Distinct().Order();
        var space = new RegimenSpace
        {
            NightLengths = [.. Enumerable.Range(0, Pick(2, 3)).Select(i => TimeSpan.FromMinutes(480 + 30 * i))],
            Cycles = [.. Enumerable.Range(3, Pick(4, 5))],
            VolumesPerCycle = [.. fills.Select(fill => Volume.FromMilliliters(fill))],
            NightSolutions = [.. DialysisSolution.UsualGlucose],
            StrongerFirstCycles = [0, 2],
            DayFills = [null, .. Enumerable.Range(0, Pick(2, 4, 6)).Select(i => new DayFill(i % 2 == 0 ? DialysisSolution.Glucose136 : DialysisSolution.Glucose227, Volume.FromMilliliters(1000 + 200 * i)))],
        };
        return (patient, ensemble, goals, space);

        T Pick<T>(params T[] choices) => choices[random.Next(choices.Length)];

        IEnumerable<RegimenBound> Bounds(double floor)
        {
            yield return RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, floor).WithProbability(Pick(0.5, 0.7, 0.9));
            yield return RegimenBound.AtLeast(RegimenMeasure.UreaDose, Pick(1.0, 1.3, 1.6)).WithProbability(Pick(0.6, 0.9));
            yield return RegimenBound.AtMost(RegimenMeasure.GlucoseAbsorbed, Pick(70.0, 110, 160)).WithProbability(0.8);
            yield return RegimenBound.AtLeast(RegimenMeasure.SodiumRemoved, Pick(10.0, 25)).WithProbability(0.6);
            yield return RegimenBound.AtLeast(RegimenMeasure.CreatinineClearance, Pick(25.0, 35));
            yield return RegimenBound.AtLeast(RegimenMeasure.Ultrafiltration, floor - 300).WithProbabilityOfSingleDay(Pick(0.6, 0.8));
        }
    }
}
