using System.Globalization;
using Transport.Tests.DocSnippets;
using Transport.Tests.References;

namespace Transport.Tests.Integration;

/// <summary>Classes A and B of the published set in full: delivered error over requested tolerance, the table of the documentation.</summary>
public sealed class DeliveredErrorTests
{
    private static readonly double[] Tolerances = [1e-3, 1e-4, 1e-5, 1e-6, 1e-7, 1e-8, 1e-9, 1e-10];

    private static readonly Problem[] Set =
    [
        Problem.A1, Problem.A2, Problem.A3, Problem.A4, Problem.A5, Problem.B1, Problem.B2, Problem.B3, Problem.B4, Problem.B5,
    ];

    [Fact]
    public void Print()
    {
        var lines = new List<string>();
        foreach (var problem in Set)
        {
            lines.Add($"{problem.Name}|" + string.Join("|", Tolerances.Select(t => { var r = Ratio(problem, t); return FormattableString.Invariant($"{r.Max:0.00} {r.End:0.00}"); })));
        }
        File.WriteAllLines("/tmp/hull.txt", lines);
    }

    private static (double Max, double End) Ratio(Problem problem, double tolerance)
    {
        var observer = new DeliveredError(problem, tolerance);
        new DormandPrince853<Real, Problem>(problem).Run(0, problem.End, problem.Start(), new() { RelativeTolerance = tolerance }, ref observer);
        return (observer.AtEnds, observer.Last);
    }
}
