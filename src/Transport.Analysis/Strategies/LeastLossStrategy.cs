namespace Transport.Analysis;

/// <summary>A regimen for each patient: the one of the study's space that loses least with the fitted membrane.</summary>
/// <param name="name">What rows and charts call it.</param>
/// <param name="loss">What is to be small.</param>
public sealed class LeastLossStrategy(string name, StrategyLoss loss) : IDwellStrategy
{
    /// <inheritdoc/>
    public string Name { get; } = name;

    /// <summary>What is to be small.</summary>
    public StrategyLoss Loss { get; } = loss;

    /// <inheritdoc/>
    public string Description => $"for each patient the least loss with the fitted membrane; loss: {Loss}";

    /// <inheritdoc/>
    public Regimen Choose(TestedPatient patient, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(patient);
        var table = patient.Table;
        return table.Regimens[table.LeastLoss(patient.Fit.Membrane, Loss, control).Index];
    }
}
