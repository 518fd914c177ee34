namespace Transport.Analysis;

/// <summary>Keeps the regimens that no other beats in everything, and of those within the noise of each other, one.</summary>
internal sealed class NonDominated
{
    // Differences below these are ties: ultrafiltration mL, Kt/V relative, glucose g (choice, after the noise of measuring them).
    private const double FluidNoise = 100;
    private const double DoseNoise = 0.05;
    private const double GlucoseNoise = 5;

    private readonly (RegimenMeasure Measure, double Sign)[] axes;

    public NonDominated(RegimenGoals goals)
    {
        List<(RegimenMeasure, double)> all = [.. goals.Objectives.Select(objective => (objective.Measure, objective.LessIsBetter ? 1.0 : -1.0))];
        foreach (var cost in new[] { RegimenMeasure.FluidUsed, RegimenMeasure.Cycles })
        {
            if (goals.Objectives.All(objective => objective.Measure != cost))
            {
                all.Add((cost, 1));
            }
        }

        axes = [.. all];
    }

    /// <summary>Those that no other dominates; with figures of maps, those that none certainly does. Nothing is marked.</summary>
    /// <param name="candidates">The candidates.</param>
    /// <param name="areExact">Whether their figures are exact.</param>
    public List<Candidate> Of(IReadOnlyList<Candidate> candidates, bool areExact)
    {
        // Whoever dominates comes first in this order.
        var entries = candidates.Select(candidate => new Entry(candidate, Place(candidate), areExact ? null : Margins(candidate))).ToList();
        entries.Sort((left, right) => Compare(left, right));
        List<Entry> kept = [];
        foreach (var entry in entries)
        {
            var killer = -1;
            for (var k = 0; k < kept.Count && killer < 0; k++)
            {
                killer = Dominates(kept[k], entry) ? k : -1;
            }

            if (killer < 0)
            {
                kept.Add(entry);
            }
            else if (killer > 0)
            {
                // Who beats one beats its neighbors.
                (kept[killer / 2], kept[killer]) = (kept[killer], kept[killer / 2]);
            }
        }

        return [.. kept.Select(entry => entry.Candidate).OrderBy(candidate => candidate.Index)];
    }

    /// <summary>Whether one of some certainly dominates a candidate, by figures of maps.</summary>
    public bool IsBeaten(Candidate candidate, IEnumerable<Candidate> others)
    {
        var entry = new Entry(candidate, Place(candidate), Margins(candidate));
        return others.Any(other => Dominates(new(other, Place(other), Margins(other)), entry));
    }

    /// <summary>Marks the ties; where more than a number remain, the noise is widened until they do not.</summary>
    public static (List<Candidate> Kept, double Width) Thin(IReadOnlyList<Candidate> front, int most)
    {
        // Glucose in steps of its noise comes first, so that within a step fewer changes and fewer cycles decide.
        var ordered = front
            .OrderBy(candidate => Math.Floor(candidate.Glucose / GlucoseNoise))
            .ThenBy(candidate => candidate.Changes)
            .ThenBy(candidate => candidate.Regimen.Cycles)
            .ThenBy(candidate => candidate.Glucose)
            .ThenBy(candidate => candidate.Index)
            .ToList();
        for (var width = 1.0; ; width *= 1.1)
        {
            List<Candidate> kept = [];
            foreach (var candidate in ordered)
            {
                if (!kept.Any(other => Ties(other, candidate, width)))
                {
                    kept.Add(candidate);
                }
            }

            if (kept.Count <= most)
            {
                foreach (var candidate in front.Except(kept))
                {
                    candidate.Dropped = DropReason.Tie;
                }

                return ([.. kept.OrderBy(candidate => candidate.Glucose).ThenBy(candidate => candidate.Index)], width);
            }
        }
    }

    private double[] Place(Candidate candidate) => [.. axes.Select(axis => axis.Sign * candidate[axis.Measure])];

    private double[] Margins(Candidate candidate) => [.. axes.Select(axis => 2 * CenterJudge.Margin(axis.Measure, candidate[axis.Measure]))];

    private static int Compare(in Entry left, in Entry right)
    {
        for (var i = 0; i < left.Place.Length; i++)
        {
            var order = left.Place[i].CompareTo(right.Place[i]);
            if (order != 0)
            {
                return order;
            }
        }

        return left.Candidate.Index.CompareTo(right.Candidate.Index);
    }

    // Not worse in anything, better in something; by margins, each certainly.
    private static bool Dominates(in Entry a, in Entry b)
    {
        var isBetter = false;
        for (var i = 0; i < a.Place.Length; i++)
        {
            var margin = b.Margins is { } margins ? margins[i] : 0;
            if (a.Place[i] + margin > b.Place[i])
            {
                return false;
            }

            isBetter |= a.Place[i] + margin < b.Place[i] || margin > 0;
        }

        return isBetter;
    }

    private static bool Ties(Candidate a, Candidate b, double width) =>
        Math.Abs(a.Ultrafiltration - b.Ultrafiltration) < FluidNoise * width
        && Math.Abs(Math.Log(a.UreaDose / b.UreaDose)) < DoseNoise * width
        && Math.Abs(a.Glucose - b.Glucose) < GlucoseNoise * width;

    private readonly record struct Entry(Candidate Candidate, double[] Place, double[]? Margins);
}
