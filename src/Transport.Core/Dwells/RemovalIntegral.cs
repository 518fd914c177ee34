namespace Transport;

/// <summary>Adds up the ways of a solute over a course: by quadrature on the dense output, so that a dwell that nobody asks pays nothing.</summary>
internal static class RemovalIntegral
{
    /// <summary>Convection, diffusion and bulk removal up to a time, µmol.</summary>
    public static (double Convection, double Diffusion, double TakenBack) Of(
        IDwellSystem<Real> system, Trajectory trajectory, int solute, double end)
    {
        var state = new Real[system.Dimension];
        var rates = new Real[system.Dimension];
        var flows = new Real[system.PathCount];
        double convection = 0, diffusion = 0, takenBack = 0;
        var low = 0.0;
        foreach (var high in Borders(system, trajectory, end))
        {
            var half = 0.5 * (high - low);
            for (var node = 0; node < GaussLegendre.Nodes.Length; node++)
            {
                var minutes = low + half * (1 + GaussLegendre.Nodes[node]);
                trajectory.At(minutes, state);
                system.Derivatives(minutes, state, rates);
                system.PathFlows(state, flows);
                var dialysate = state[1 + solute].Value / state[0].Value;
                var carried = 0.0;
                for (var path = 0; path < flows.Length; path++)
                {
                    var flow = flows[path].Value;
                    carried += flow * system.Passed(path, solute) * (flow > 0 ? system.PlasmaOf(solute).Value : dialysate);
                }

                var back = system.BulkRemoval(state).Value * dialysate;
                var weight = GaussLegendre.Weights[node] * half;
                convection += weight * carried;
                diffusion += weight * (rates[1 + solute].Value + back - carried);
                takenBack += weight * back;
            }

            low = high;
        }

        return (convection, diffusion, takenBack);
    }

    // Ends of steps, and where a path's flow turns: there the side turns from which it carries.
    private static IEnumerable<double> Borders(IDwellSystem<Real> system, Trajectory trajectory, double end)
    {
        var borders = new SortedSet<double> { end };
        borders.UnionWith(trajectory.Times.ToArray());
        for (var path = 0; path < system.PathCount; path++)
        {
            var slot = system.Dimension - system.PathCount + path;
            borders.UnionWith(trajectory.Roots(step => Bernstein.Derivative(trajectory.Polynomial(slot, step))));
        }

        return borders.Where(time => time > 0 && time <= end);
    }
}
