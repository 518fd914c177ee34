namespace Transport.Analysis;

/// <summary>Keeps the regimens that no other beats in everything, and of those within the noise of each other, one.</summary>
internal sealed class NonDominated
{
    // Differences below these are ties, as those of ultrafiltration below OutlookFindings.FluidNoise are: Kt/V relative, glucose g (choice, after the noise of measuring them).
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
        // Whoever is beaten is beaten by one of all, and by one that stays: with or without margins, what beats another also beats whatever that one beats.
        var tree = Tree(candidates);
        return [.. candidates.Where(candidate => !IsBeaten(candidate, tree, areExact)).OrderBy(candidate => candidate.Index)];
    }

    /// <summary>Those of some that one of others certainly dominates, by figures of maps.</summary>
    public HashSet<Candidate> Beaten(IReadOnlyList<Candidate> candidates, IReadOnlyList<Candidate> by)
    {
        var tree = Tree(by);
        return [.. candidates.Where(candidate => IsBeaten(candidate, tree, areExact: false))];
    }

    /// <summary>Marks the ties; where more than a number remain, the noise is widened until they do not.</summary>
    public static (List<Candidate> Kept, double Width) Thin(IReadOnlyList<Candidate> front, int most)
    {
        // Glucose in steps of its noise comes first, so that within a step fewer changes and fewer cycles decide.
        var ordered = front
            .OrderBy(candidate => Math.Floor(candidate.Glucose / GlucoseNoise))
            .ThenBy(candidate => candidate.Changes)
            .ThenBy(candidate => candidate[RegimenMeasure.Cycles])
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

    private DominanceTree Tree(IReadOnlyList<Candidate> candidates)
    {
        var places = new double[candidates.Count * axes.Length];
        for (var i = 0; i < candidates.Count; i++)
        {
            Place(candidates[i], places.AsSpan(i * axes.Length, axes.Length));
        }

        return new(axes.Length, places);
    }

    // Not worse in anything, better in something; by maps, certainly.
    private bool IsBeaten(Candidate candidate, DominanceTree by, bool areExact)
    {
        Span<double> place = stackalloc double[axes.Length];
        Span<double> limit = stackalloc double[axes.Length];
        Place(candidate, place);
        for (var i = 0; i < axes.Length; i++)
        {
            limit[i] = place[i] - (areExact ? 0 : 2 * CenterJudge.Margin(axes[i].Measure, candidate[axes[i].Measure]));
        }

        return by.Beats(limit, place);
    }

    private void Place(Candidate candidate, Span<double> into)
    {
        for (var i = 0; i < axes.Length; i++)
        {
            into[i] = axes[i].Sign * candidate[axes[i].Measure];
        }
    }

    private static bool Ties(Candidate a, Candidate b, double width) =>
        Math.Abs(a.Ultrafiltration - b.Ultrafiltration) < OutlookFindings.FluidNoise * width
        && Math.Abs(Math.Log(a.UreaDose / b.UreaDose)) < DoseNoise * width
        && Math.Abs(a.Glucose - b.Glucose) < GlucoseNoise * width;
}
