namespace Transport.Studies;

/// <summary>How the world that makes a study's data differs from the model that is fitted to them.</summary>
public enum World
{
    /// <summary>Not at all.</summary>
    AsModelled,

    /// <summary>1 mL/min are lost to the lymph, where the model fits with 0.3.</summary>
    FasterLymph,

    /// <summary>Errors of the laboratory and of the scale have heavy tails: Student's t with 3 degrees of freedom at the stated standard deviation.</summary>
    HeavyTails,

    /// <summary>One barrier without pores: the classical model makes the data, the three-pore model is fitted to them.</summary>
    Lumped,
}
