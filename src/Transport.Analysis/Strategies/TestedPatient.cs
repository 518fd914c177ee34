namespace Transport.Analysis;

/// <summary>What a clinic knows of a patient: size, kidneys, the sheet of a test and the fit of it. The true membrane is not in it.</summary>
public sealed class TestedPatient
{
    internal TestedPatient(VirtualPatient truth, EquilibrationTest test, FittedMembrane fit, RegimenTable table)
    {
        (Number, Patient, Test, Fit, Table) = (truth.Number, truth.Patient, test, fit, table);
        Category = CategoryCuts.Twardowski1987Creatinine.Of(
            test.Dialysate[^1].Creatinine!.Value.MillimolesPerLiter / test.Plasma[0].Creatinine!.Value.MillimolesPerLiter);
    }

    /// <summary>Place in the population.</summary>
    public int Number { get; }

    /// <summary>Size, plasma, kidneys.</summary>
    public Patient Patient { get; }

    /// <summary>What the laboratory wrote.</summary>
    public EquilibrationTest Test { get; }

    /// <summary>What a fit makes of it.</summary>
    public FittedMembrane Fit { get; }

    /// <summary>The class of the last sample's D/P of creatinine, by the cuts of 1987.</summary>
    public TransportCategory Category { get; }

    /// <summary>The regimens to choose among.</summary>
    internal RegimenTable Table { get; }
}
