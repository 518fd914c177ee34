namespace Transport.Analysis;

/// <summary>Why a regimen that was looked at is not among the options.</summary>
public enum DropReason
{
    /// <summary>It cannot be carried out: fills and drains do not fit.</summary>
    NotPossible,

    /// <summary>Its night is longer than the patient wants.</summary>
    NightTooLong,

    /// <summary>A fill is above the limit.</summary>
    FillTooLarge,

    /// <summary>A dwell is below 20 min.</summary>
    DwellTooShort,

    /// <summary>Too many exchanges with the strongest glucose.</summary>
    TooManyStrongest,

    /// <summary>The cavity would hold too much.</summary>
    Overfill,

    /// <summary>It removes more fluid than the ceiling: never offered.</summary>
    AboveFluidCeiling,

    /// <summary>It removes less fluid than the floor.</summary>
    BelowFluidFloor,

    /// <summary>Its clearance is below the goal by more than the noise of a measurement.</summary>
    BelowClearanceGoal,

    /// <summary>It misses a bound over the ensemble.</summary>
    MissesBound,

    /// <summary>The pressure would be too high.</summary>
    PressureTooHigh,

    /// <summary>The patient, the machine or the store does not allow it: a wet day, icodextrin, cycles, fluid.</summary>
    NotAllowed,

    /// <summary>It is the present regimen, which has a row of its own.</summary>
    IsPresent,

    /// <summary>Another regimen is as good in everything and better in something.</summary>
    Dominated,

    /// <summary>It does not differ from an option by more than the noise.</summary>
    Tie,
}
