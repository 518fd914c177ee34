namespace Transport;

/// <summary>What draws the water.</summary>
public enum OsmoticAgent
{
    /// <summary>Glucose.</summary>
    Glucose,

    /// <summary>Icodextrin, a glucose polymer.</summary>
    Icodextrin,

    /// <summary>Amino acids.</summary>
    AminoAcids,
}
