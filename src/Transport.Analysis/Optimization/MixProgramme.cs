using System.Collections.Immutable;
using Google.OrTools.LinearSolver;

namespace Transport.Analysis;

/// <summary>How many of each kind, so that sums keep their limits and a cost is least: a linear programme, in parts or whole numbers.</summary>
/// <remarks>Solved by Google OR-Tools: GLOP in parts, SCIP in whole numbers, both deterministic with one thread.</remarks>
internal sealed class MixProgramme(int kinds, double mostCycles)
{
    private readonly List<(double[] Coefficients, double Least, double Most)> rows = [];

    /// <summary>A sum over the kinds that has to lie between two limits.</summary>
    public void Add(double[] coefficients, double least, double most) => rows.Add((coefficients, least, most));

    /// <summary>The numbers with the least cost; null: nothing keeps the limits.</summary>
    /// <param name="cost">Of one of each kind.</param>
    /// <param name="isWhole">Whether only whole numbers count.</param>
    /// <param name="gap">How far whole numbers may be from the least cost, as a share of it: the last per cent takes most of the time.</param>
    public ImmutableArray<double>? Solve(double[] cost, bool isWhole, double gap = 0)
    {
        using var solver = Solver.CreateSolver(isWhole ? "SCIP" : "GLOP") ?? throw new InvalidOperationException("The solver is not there: Google OR-Tools has no native library for this platform.");
        var numbers = Enumerable.Range(0, kinds)
            .Select(k => isWhole ? solver.MakeIntVar(0, Math.Floor(mostCycles), "") : solver.MakeNumVar(0, double.PositiveInfinity, ""))
            .ToArray();
        foreach (var (coefficients, least, most) in rows.Append((Enumerable.Repeat(1.0, kinds).ToArray(), 0, mostCycles)))
        {
            var row = solver.MakeConstraint(least, most, "");
            for (var k = 0; k < kinds; k++)
            {
                row.SetCoefficient(numbers[k], coefficients[k]);
            }
        }

        var objective = solver.Objective();
        for (var k = 0; k < kinds; k++)
        {
            objective.SetCoefficient(numbers[k], cost[k]);
        }

        objective.SetMinimization();
        using var parameters = new MPSolverParameters();
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, gap);
        return solver.Solve(parameters) is Solver.ResultStatus.OPTIMAL
            ? [.. numbers.Select(number => isWhole ? Math.Round(number.SolutionValue()) : Math.Max(0, number.SolutionValue()))]
            : null;
    }
}
