namespace Transport.Analysis;

/// <summary>A regimen for each patient: the first option of a search over the fitted membrane's doubt, that is the one with the least absorbed glucose.</summary>
/// <param name="name">What rows and charts call it.</param>
/// <param name="goals">What is asked for.</param>
/// <param name="otherwise">For those for whom nothing meets the goals.</param>
/// <param name="options">How the search goes about it; one worker each, because patients are worked on side by side.</param>
/// <exception cref="RegimenException">The regimen cannot be carried out.</exception>
public sealed class SearchStrategy(string name, RegimenGoals goals, Regimen otherwise, RegimenSearchOptions? options = null) : IDwellStrategy
{
    private readonly RegimenSearchOptions options = (options ?? RegimenSearchOptions.Default) with { Workers = 1, MostOptions = 1 };

    /// <inheritdoc/>
    public string Name { get; } = name;

    /// <summary>What is asked for.</summary>
    public RegimenGoals Goals { get; } = goals;

    /// <summary>For those for whom nothing meets the goals.</summary>
    public Regimen Otherwise { get; } = otherwise.OrThrow();

    /// <inheritdoc/>
    public string Description => $"for each patient the least glucose that keeps {Goals} over {options.EnsembleMembers} draws of the fit; otherwise {Otherwise}";

    /// <inheritdoc/>
    public Regimen Choose(TestedPatient patient, RunControl control)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(control);
        var front = RegimenSearch.Run(
            patient.Patient,
            patient.Fit.ToEnsemble(options.EnsembleMembers),
            Goals,
            patient.Table.Space,
            options: options with { Tested = patient.Test.Solution },
            control: new() { Cancellation = control.Cancellation });
        return front.NothingMeets is null && front.Options is [var first, ..] ? first.Regimen : Otherwise;
    }
}
