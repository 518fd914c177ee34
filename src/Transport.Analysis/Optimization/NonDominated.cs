namespace Transport.Analysis;

/// <summary>Keeps the regimens that no other beats in everything, and of those within the noise of each other, one.</summary>
internal static class NonDominated
{
    // Differences below these are ties: ultrafiltration mL, Kt/V relative, glucose g (choice, after the noise of measuring them).
    private const double FluidNoise = 100;
    private const double DoseNoise = 0.05;
    private const double GlucoseNoise = 5;

    /// <summary>Marks every candidate that another one dominates.</summary>
    public static List<Candidate> Of(IReadOnlyList<Candidate> feasible)
    {
        List<Candidate> kept = [];
        foreach (var candidate in feasible)
        {
            if (feasible.Any(other => Dominates(other, candidate)))
            {
                candidate.Dropped = DropReason.Dominated;
            }
            else
            {
                kept.Add(candidate);
            }
        }

        return kept;
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

    internal static bool Dominates(Candidate a, Candidate b)
    {
        var notWorse = a.UreaDose >= b.UreaDose && a.Glucose <= b.Glucose && a.Sodium >= b.Sodium && a.FluidUsed <= b.FluidUsed
            && a.Regimen.Cycles <= b.Regimen.Cycles && a.Strongest <= b.Strongest && a.Regimen.NightLength <= b.Regimen.NightLength;
        var better = a.UreaDose > b.UreaDose || a.Glucose < b.Glucose || a.Sodium > b.Sodium || a.FluidUsed < b.FluidUsed
            || a.Regimen.Cycles < b.Regimen.Cycles || a.Strongest < b.Strongest || a.Regimen.NightLength < b.Regimen.NightLength;
        return notWorse && better;
    }

    private static bool Ties(Candidate a, Candidate b, double width) =>
        Math.Abs(a.Ultrafiltration - b.Ultrafiltration) < FluidNoise * width
        && Math.Abs(Math.Log(a.UreaDose / b.UreaDose)) < DoseNoise * width
        && Math.Abs(a.Glucose - b.Glucose) < GlucoseNoise * width;
}
