using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The free numbers of one barrier, each as a coordinate in which its prior is a unit Gaussian.</summary>
/// <remarks>Urea's coefficient follows creatinine's, and sodium's osmotic conductance follows glucose's, in the proportions of the center.</remarks>
internal sealed class LumpedCoordinates : IMembraneModel
{
    private readonly LumpedMembrane center;
    private readonly Coordinate[] coordinates;
    private readonly double ureaToCreatinine;
    private readonly double sodiumToGlucose;

    /// <param name="center">The membrane at the center, at the patient's size.</param>
    /// <param name="prior">How far people differ from it.</param>
    public LumpedCoordinates(LumpedMembrane center, LumpedPrior prior)
    {
        this.center = center;
        var numbers = LumpedParameters<Real>.From(center, SolutePanel.Small);
        var creatinine = numbers.MassTransfer[SolutePanel.Creatinine].Value;
        var conductance = numbers.ConductanceToGlucose.Value;
        ureaToCreatinine = numbers.MassTransfer[SolutePanel.Urea].Value / creatinine;
        sodiumToGlucose = numbers.ConductanceToSodium.Value / conductance;
        coordinates =
        [
            // In the order of the parameters.
            Coordinate.OfPositive(creatinine, prior.CreatinineTransferLogDeviation),
            Coordinate.OfPositive(numbers.MassTransfer[SolutePanel.Glucose].Value / creatinine, prior.GlucoseToCreatinineLogDeviation),
            Coordinate.OfPositive(conductance, prior.OsmoticConductanceLogDeviation),
            Coordinate.OfShare(numbers.SievingCoefficient.Value, prior.SievingLogDeviation),
            Coordinate.OfPositive(numbers.MassTransfer[SolutePanel.Sodium].Value, prior.SodiumTransferLogDeviation),
            Coordinate.OfPositive(numbers.FluidAbsorption.Value, prior.FluidAbsorptionLogDeviation),
        ];
    }

    public int Count => coordinates.Length;

    public Coordinate this[int index] => coordinates[index];

    /// <summary>What the equations take at a point.</summary>
    public LumpedParameters<T> At<T>(ReadOnlySpan<T> point)
        where T : struct, ILane<T>
    {
        var creatinine = Value(point, LumpedParameter.CreatinineTransfer);
        var conductance = Value(point, LumpedParameter.OsmoticConductance);
        return new()
        {
            // In the order of the small panel.
            MassTransfer =
            [
                ureaToCreatinine * creatinine,
                creatinine,
                Value(point, LumpedParameter.GlucoseToCreatinine) * creatinine,
                Value(point, LumpedParameter.SodiumTransfer),
            ],
            SievingCoefficient = Value(point, LumpedParameter.SievingCoefficient),
            ConductanceToGlucose = conductance,
            ConductanceToSodium = sodiumToGlucose * conductance,
            FluidAbsorption = Value(point, LumpedParameter.FluidAbsorption),
        };
    }

    /// <summary>The membrane at a point.</summary>
    public LumpedMembrane Membrane(IReadOnlyList<double> point)
    {
        var at = At<Real>([.. point.Take(Count).Select(Real.Of)]);
        return center with
        {
            MassTransfer = SolutePanel.Small.Solutes.Select((solute, i) => (solute, i)).ToImmutableDictionary(
                row => row.solute, row => Clearance.FromMillilitersPerMinute(at.MassTransfer[row.i].Value)),
            SievingCoefficient = at.SievingCoefficient.Value,
            OsmoticConductanceToGlucose = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(at.ConductanceToGlucose.Value),
            OsmoticConductanceToSodium = HydraulicConductance.FromMillilitersPerMinutePerMillimeterOfMercury(at.ConductanceToSodium.Value),
            FluidAbsorption = FlowRate.FromMillilitersPerMinute(at.FluidAbsorption.Value),
        };
    }

    public IModelDwell<T> Dwell<T>(ObservedExchange exchange, SolutePanel panel)
        where T : struct, ILane<T> => new LumpedDwell<T>(this, exchange, panel);

    private T Value<T>(ReadOnlySpan<T> point, LumpedParameter parameter)
        where T : struct, ILane<T> => coordinates[(int)parameter].Value(point[(int)parameter]);

    private sealed class LumpedDwell<T> : IModelDwell<T>
        where T : struct, ILane<T>
    {
        private readonly LumpedCoordinates membrane;
        private readonly SampledDwell<T, LumpedSystem<T>> dwell;

        public LumpedDwell(LumpedCoordinates membrane, ObservedExchange exchange, SolutePanel panel)
        {
            this.membrane = membrane;
            dwell = new(
                exchange.Dwell, exchange.Patient.Plasma, panel,
                followed => new(membrane.At<T>(new T[membrane.Count]), CavityContents.Of(exchange.Patient.Plasma, followed), exchange.Dwell.Fill.Milliliters));
        }

        public int Dimension => dwell.Dimension;

        public void Run(ReadOnlySpan<T> point, T residualVolume, ReadOnlySpan<double> minutes, Span<T> states, IntegrationOptions integration)
        {
            dwell.System = new(membrane.At(point), dwell.Plasma, dwell.Fill);
            dwell.Run(residualVolume, minutes, states, integration);
        }
    }
}
