using MathNet.Numerics.LinearAlgebra.Double;
using Transport.Analysis;

namespace Transport.Benchmarks;

/// <summary>SciPy's least_squares on the same test, priors and starts. It times itself in a process of its own.</summary>
/// <param name="Single">One start with its covariance, µs.</param>
/// <param name="Full">Starts until two agree, µs.</param>
/// <param name="Point">Coordinates of the optimum.</param>
/// <param name="Evaluations">Dwells of the last start.</param>
internal sealed record FitPeer(double Single, double Full, double[] Point, int Evaluations)
{
    /// <summary>The peer's timing; null where it is not installed.</summary>
    public static FitPeer? Run(ThreePoreProblem problem, double[][] starts, double tolerance)
    {
        var exchange = problem.Exchanges[0];
        var center = problem.Membrane.Center;
        var panel = SolutePanel.Small;
        var pores = new PoreCoefficients(center, panel);
        var groups = exchange.Observations.Where(observation => observation.IsFitted).GroupBy(observation => observation.Quantity).ToArray();
        Observation[] fitted = [.. groups.SelectMany(group => group)];
        var times = fitted.Select(observation => observation.Time.TotalMinutes).Where(minutes => minutes > 0).Distinct().Order().ToList();
        var plasma = CavityContents.Of(exchange.Patient.Plasma, panel);
        var reference = center.ReferenceVolume.Milliliters;
        var perVolume = 1 / center.VolumePerPressure!.Value.Milliliters;
        return PythonPeer.Run<FitPeer>("fit_test.py", new
        {
            minutes = times,
            plasma = plasma.Select((level, i) => level * pores.BloodSide[i]),
            creatinine = plasma[SolutePanel.Creatinine],
            sigmaSmall = pores.Small.Select(one => one.Reflection),
            sigmaLarge = pores.Large.Select(one => one.Reflection),
            perAreaSmall = pores.Small.Select(one => one.PerDiffusionArea),
            perAreaLarge = pores.Large.Select(one => one.PerDiffusionArea),
            proteinSmall = pores.ProteinReflection_S,
            proteinLarge = pores.ProteinReflection_L,
            radiusSmall = center.Pores.SmallRadiusAngstrom,
            radiusLarge = center.Pores.LargeRadiusAngstrom,
            largeFraction = center.Pores.LargeFraction,
            ureaRatio = center.UreaToCreatininePermeability!.Value,
            rt = PhysicalConstants.OsmoticPressurePerConcentration,
            pressureEmpty = center.HydrostaticPressureDifference.MillimetersOfMercury + reference * perVolume,
            pressurePerVolume = perVolume,
            oncotic = center.OncoticPressureDifference.MillimetersOfMercury,
            transientRate = 1 / center.TransientTime.TotalMinutes,
            fill = exchange.Dwell.Fill.Milliliters,
            fresh = CavityContents.Of(exchange.Dwell.Solution, panel),
            residual = CavityContents.Of(exchange.Dwell.Residual, panel),
            tolerance,
            scale = (double[])[0.01 * reference, .. plasma.Select(level => 1e-3 * reference * level)],
            coordinates = problem.Membrane.Free.Select((parameter, j) => Scale(problem.Membrane[j], MembraneCoordinates.IsShare(parameter)))
                .Append(Scale(problem.ResidualVolumes[0], false)),
            readings = fitted.Select(observation => (object[])[Kind(observation.Quantity), 1 + times.IndexOf(observation.Time.TotalMinutes)]),
            observed = fitted.Select(observation => observation.Value),
            isVolume = fitted.Select(observation => observation.Quantity == ObservedQuantity.NetUltrafiltrationMilliliters),
            whitening = Whitening(groups, fitted.Length),
            starts,
        });
    }

    private static object Scale(Coordinate coordinate, bool isShare)
    {
        var center = coordinate.Value(0);
        return new { center = isShare ? Math.Log(center / (1 - center)) : Math.Log(center), spread = coordinate.Spread, isShare };
    }

    private static string Kind(ObservedQuantity quantity) => quantity switch
    {
        ObservedQuantity.CreatinineToPlasma => "creatinine",
        ObservedQuantity.GlucoseToInitial => "initial",
        ObservedQuantity.GlucoseToFresh => "fresh",
        ObservedQuantity.NetUltrafiltrationMilliliters => "volume",
        _ => throw new InvalidOperationException($"The peer does not know {quantity}."),
    };

    private static double[][] Whitening(IGrouping<ObservedQuantity, Observation>[] groups, int count)
    {
        var rows = Enumerable.Range(0, count).Select(_ => new double[count]).ToArray();
        var first = 0;
        foreach (var group in groups)
        {
            Observation[] own = [.. group];
            var inverse = DenseMatrix.Create(own.Length, own.Length, (i, j) =>
                own[i].SharedDeviation * own[j].SharedDeviation + (i == j ? own[i].OwnDeviation * own[i].OwnDeviation : 0)).Cholesky().Factor.Inverse();
            for (var i = 0; i < own.Length; i++)
            {
                for (var j = 0; j < own.Length; j++)
                {
                    rows[first + i][first + j] = inverse[i, j];
                }
            }

            first += own.Length;
        }

        return rows;
    }
}
