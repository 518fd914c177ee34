namespace Transport.Analysis;

/// <summary>A way to choose a regimen for a patient from what a clinic knows.</summary>
public interface IDwellStrategy
{
    /// <summary>What rows and charts call it.</summary>
    public string Name { get; }

    /// <summary>Everything that decides what it chooses, in words: two strategies with one description choose alike.</summary>
    public string Description { get; }

    /// <summary>The regimen for a patient; the same for the same patient, on any thread.</summary>
    /// <param name="patient">What is known.</param>
    /// <param name="control">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public Regimen Choose(TestedPatient patient, RunControl control);
}
