namespace Transport.Analysis;

/// <summary>Which numbers of a membrane are free, each as a coordinate in which its prior is a unit Gaussian.</summary>
/// <remarks>
/// The osmotic conductance to glucose is a coordinate, and LpS follows from it and the shares of the pores: glucose tells the one and hardly the other.
/// </remarks>
internal sealed class MembraneCoordinates : IMembraneModel
{
    private readonly Coordinate[] coordinates;
    private readonly int[] places;
    private readonly double sigma_S;
    private readonly double sigma_L;

    /// <param name="center">The membrane at the center, at the patient's size.</param>
    /// <param name="prior">How far people differ from it.</param>
    /// <param name="free">What is free, without repetition.</param>
    public MembraneCoordinates(ThreePoreMembrane center, PopulationPrior prior, IReadOnlyList<MembraneParameter> free)
    {
        Center = center;
        Free = free;
        places = [.. Enum.GetValues<MembraneParameter>().Select(parameter => free.ToList().IndexOf(parameter))];
        coordinates = [.. free.Select(parameter => IsShare(parameter)
            ? Coordinate.OfShare(Of(center, parameter), prior.LogDeviation(parameter))
            : Coordinate.OfPositive(Of(center, parameter), prior.LogDeviation(parameter)))];
        sigma_S = Hindrance.ReflectionCoefficient(Solutes.Glucose.RadiusAngstrom / center.Pores.SmallRadiusAngstrom, center.HindranceForm);
        sigma_L = Hindrance.ReflectionCoefficient(Solutes.Glucose.RadiusAngstrom / center.Pores.LargeRadiusAngstrom, center.HindranceForm);
    }

    /// <summary>The membrane where every coordinate is zero.</summary>
    public ThreePoreMembrane Center { get; }

    /// <summary>The free parameters, in order.</summary>
    public IReadOnlyList<MembraneParameter> Free { get; }

    public int Count => coordinates.Length;

    public Coordinate this[int index] => coordinates[index];

    /// <summary>Whether a parameter is a share, whose coordinate is its log odds.</summary>
    public static bool IsShare(MembraneParameter parameter) =>
        parameter is MembraneParameter.UltrasmallFraction or MembraneParameter.LargePoreFraction;

    /// <summary>A membrane's number, in the unit of the kinetics.</summary>
    public static double Of(ThreePoreMembrane membrane, MembraneParameter parameter) => parameter switch
    {
        MembraneParameter.DiffusionArea => membrane.DiffusionArea.Centimeters,
        MembraneParameter.GlucosePermeabilityScale => membrane.GlucosePermeabilityScale,
        MembraneParameter.OsmoticConductance => membrane.OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury,
        MembraneParameter.TransientAmplitude => membrane.TransientAmplitude,
        MembraneParameter.LymphaticRemoval => membrane.LymphaticRemoval.MillilitersPerMinute,
        MembraneParameter.UltrasmallFraction => membrane.Pores.UltrasmallFraction,
        MembraneParameter.SodiumPermeability => membrane.SodiumPermeability.MillilitersPerMinute,
        MembraneParameter.LargePoreFraction => membrane.Pores.LargeFraction,
        _ => throw new ArgumentOutOfRangeException(nameof(parameter), parameter, "Expected a parameter that exists."),
    };

    /// <summary>What the kinetics takes at a point.</summary>
    public FreeParameters<T> At<T>(ReadOnlySpan<T> point)
        where T : struct, ILane<T>
    {
        var ultrasmall = Value(point, MembraneParameter.UltrasmallFraction);
        var large = Value(point, MembraneParameter.LargePoreFraction);
        var sigma = ultrasmall + sigma_S * (T.Of(1) - ultrasmall - large) + sigma_L * large;
        return new()
        {
            DiffusionArea = Value(point, MembraneParameter.DiffusionArea),
            GlucosePermeabilityScale = Value(point, MembraneParameter.GlucosePermeabilityScale),
            UltrafiltrationCoefficient = Value(point, MembraneParameter.OsmoticConductance) / sigma,
            TransientAmplitude = Value(point, MembraneParameter.TransientAmplitude),
            LymphaticRemoval = Value(point, MembraneParameter.LymphaticRemoval),
            UltrasmallFraction = ultrasmall,
            LargeFraction = large,
            SodiumPermeability = Value(point, MembraneParameter.SodiumPermeability),
        };
    }

    /// <inheritdoc/>
    public IModelDwell<T> Dwell<T>(ObservedExchange exchange, SolutePanel panel)
        where T : struct, ILane<T> => new ThreePoreDwell<T>(this, new(exchange.Dwell, exchange.Patient.Plasma, panel));

    /// <summary>The membrane at a point.</summary>
    public ThreePoreMembrane Membrane(IReadOnlyList<double> point)
    {
        var at = At<Real>([.. point.Take(Count).Select(Real.Of)]);
        return Center with
        {
            DiffusionArea = DiffusionArea.FromCentimeters(at.DiffusionArea.Value),
            GlucosePermeabilityScale = at.GlucosePermeabilityScale.Value,
            UltrafiltrationCoefficient = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(at.UltrafiltrationCoefficient.Value),
            TransientAmplitude = at.TransientAmplitude.Value,
            LymphaticRemoval = FlowRate.FromMillilitersPerMinute(at.LymphaticRemoval.Value),
            Pores = Center.Pores.WithFractions(at.UltrasmallFraction.Value, at.LargeFraction.Value),
            SodiumPermeability = Clearance.FromMillilitersPerMinute(at.SodiumPermeability.Value),
        };
    }

    /// <summary>Members from points, at the patient's size.</summary>
    /// <param name="source">Where the points come from.</param>
    /// <param name="seed">Seed of the draw.</param>
    /// <param name="standsFor">The membrane that stands for the ensemble as a point.</param>
    /// <param name="count">How many.</param>
    /// <param name="point">A member's coordinate.</param>
    public MembraneEnsemble Ensemble(EnsembleSource source, int seed, ThreePoreMembrane standsFor, int count, Func<int, int, double> point)
    {
        var members = new FreeParameters<Real>[count];
        var at = new Real[Count];
        for (var i = 0; i < count; i++)
        {
            for (var j = 0; j < Count; j++)
            {
                at[j] = Real.Of(point(i, j));
            }

            members[i] = At<Real>(at);
        }

        return new(
            source,
            seed,
            standsFor,
            [.. members.Select(member => member.UltrafiltrationCoefficient.Value)],
            [.. members.Select(member => member.DiffusionArea.Value)],
            [.. members.Select(member => member.GlucosePermeabilityScale.Value)],
            [.. members.Select(member => member.TransientAmplitude.Value)],
            [.. members.Select(member => member.LymphaticRemoval.Value)],
            [.. members.Select(member => member.UltrasmallFraction.Value)],
            [.. members.Select(member => member.LargeFraction.Value)],
            [.. members.Select(member => member.SodiumPermeability.Value)]);
    }

    private T Value<T>(ReadOnlySpan<T> point, MembraneParameter parameter)
        where T : struct, ILane<T> => places[(int)parameter] is >= 0 and var j ? coordinates[j].Value(point[j]) : T.Of(Of(Center, parameter));

    private sealed class ThreePoreDwell<T>(MembraneCoordinates membrane, DwellKernel<T> kernel) : IModelDwell<T>
        where T : struct, ILane<T>
    {
        public int Dimension => kernel.Dimension;

        public void Run(ReadOnlySpan<T> point, T residualVolume, ReadOnlySpan<double> minutes, Span<T> states, IntegrationOptions integration) =>
            kernel.Run(membrane.Center, membrane.At(point), residualVolume, minutes, states, integration);
    }
}
