namespace Transport.Analysis;

/// <summary>Which numbers of a membrane are free, each as a coordinate in which its prior is a unit Gaussian.</summary>
internal sealed class MembraneCoordinates
{
    private readonly Coordinate[] coordinates;

    /// <param name="center">The membrane at the center, at the patient's size.</param>
    /// <param name="prior">How far people differ from it.</param>
    public MembraneCoordinates(ThreePoreMembrane center, PopulationPrior prior)
    {
        Center = center;
        Free = Enum.GetValues<MembraneParameter>();
        coordinates = [.. Free.Select(parameter => Coordinate.OfPositive(Of(center, parameter), prior.LogDeviation(parameter)))];
    }

    /// <summary>The membrane where every coordinate is zero.</summary>
    public ThreePoreMembrane Center { get; }

    /// <summary>The free parameters, in order.</summary>
    public IReadOnlyList<MembraneParameter> Free { get; }

    public int Count => coordinates.Length;

    public Coordinate this[int index] => coordinates[index];

    /// <summary>A membrane's number, in the unit of the kinetics.</summary>
    public static double Of(ThreePoreMembrane membrane, MembraneParameter parameter) => parameter switch
    {
        MembraneParameter.DiffusionArea => membrane.DiffusionArea.Centimeters,
        MembraneParameter.GlucosePermeabilityScale => membrane.GlucosePermeabilityScale,
        MembraneParameter.UltrafiltrationCoefficient => membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury,
        MembraneParameter.TransientAmplitude => membrane.TransientAmplitude,
        _ => throw new ArgumentOutOfRangeException(nameof(parameter), parameter, "Expected a parameter that exists."),
    };

    /// <summary>What the kinetics takes at a point.</summary>
    public FreeParameters<T> At<T>(ReadOnlySpan<T> point)
        where T : struct, ILane<T> => new()
        {
            DiffusionArea = coordinates[0].Value(point[0]),
            GlucosePermeabilityScale = coordinates[1].Value(point[1]),
            UltrafiltrationCoefficient = coordinates[2].Value(point[2]),
            TransientAmplitude = coordinates[3].Value(point[3]),
            LymphaticRemoval = T.Of(Center.LymphaticRemoval.MillilitersPerMinute),
        };

    /// <summary>The membrane at a point.</summary>
    public ThreePoreMembrane Membrane(IList<double> point) => Center with
    {
        DiffusionArea = DiffusionArea.FromCentimeters(coordinates[0].Value(point[0])),
        GlucosePermeabilityScale = coordinates[1].Value(point[1]),
        UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(coordinates[2].Value(point[2])),
        TransientAmplitude = coordinates[3].Value(point[3]),
    };

    /// <summary>Members from points, at the patient's size.</summary>
    /// <param name="source">Where the points come from.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <param name="standsFor">The membrane that stands for the ensemble as a point.</param>
    /// <param name="count">How many.</param>
    /// <param name="point">A member's coordinate.</param>
    public MembraneEnsemble Ensemble(EnsembleSource source, int seed, ThreePoreMembrane standsFor, int count, Func<int, int, double> point)
    {
        var values = new double[Count][];
        for (var j = 0; j < Count; j++)
        {
            values[j] = new double[count];
            for (var i = 0; i < count; i++)
            {
                values[j][i] = coordinates[j].Value(point(i, j));
            }
        }

        return new(source, seed, standsFor, [.. values[2]], [.. values[0]], [.. values[1]], [.. values[3]]);
    }
}
