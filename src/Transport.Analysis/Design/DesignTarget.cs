namespace Transport.Analysis;

/// <summary>What a test is to make more precise: a number that follows from a membrane.</summary>
public sealed record DesignTarget
{
    /// <summary>A number of one's own.</summary>
    /// <param name="name">What advice calls it.</param>
    /// <param name="unit">Unit of the number; empty where it has none.</param>
    /// <param name="of">The number of a membrane, at the patient's size; smooth in it.</param>
    public DesignTarget(string name, string unit, Func<ThreePoreMembrane, double> of) => (Name, Unit, Of) = (name, unit, of);

    /// <summary>What advice calls it.</summary>
    public string Name { get; }

    /// <summary>Its unit.</summary>
    public string Unit { get; }

    /// <summary>The number of a membrane.</summary>
    public Func<ThreePoreMembrane, double> Of { get; }

    /// <summary>Ultrafiltration of a day of a regimen, mL.</summary>
    public static DesignTarget UltrafiltrationOf(Patient patient, Regimen regimen) =>
        new("ultrafiltration of the regimen", "mL", membrane => RegimenSimulation.Run(patient, membrane, regimen).Ultrafiltration.Milliliters);

    /// <summary>Ultrafiltration of one dwell, mL.</summary>
    public static DesignTarget UltrafiltrationOf(Patient patient, Dwell dwell)
    {
        ArgumentNullException.ThrowIfNull(dwell);
        return new(
            $"ultrafiltration of {dwell.Solution.Name}, {dwell.Duration.TotalHours:0.#} h", "mL",
            membrane => DwellSimulation.Run(patient, membrane, dwell).NetUltrafiltrationAt(dwell.Duration).Milliliters);
    }

    /// <summary>A parameter of the membrane, as its logarithm: 0.1 is about 10 %.</summary>
    public static DesignTarget LogarithmOf(MembraneParameter parameter) =>
        new(parameter.Name(), "of its logarithm", membrane => Math.Log(MembraneCoordinates.Of(membrane, parameter)));
}
