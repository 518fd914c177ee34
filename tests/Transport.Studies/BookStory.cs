namespace Transport.Studies;

/// <summary>What happens to a virtual person, of which the book says nothing.</summary>
public enum BookStory
{
    /// <summary>Nothing.</summary>
    Stable,

    /// <summary>Transfer rises until ultrafiltration has lost its share.</summary>
    FasterTransfer,

    /// <summary>Osmotic conductance falls until ultrafiltration has lost its share.</summary>
    LowerConductance,

    /// <summary>Fluid loss rises until ultrafiltration has lost its share.</summary>
    MoreFluidLoss,

    /// <summary>From a day on each drain leaves a further share of what was in behind, all of which is still there in the evening.</summary>
    DrainFault,

    /// <summary>The same, and a dry day takes up what the morning left, as it does by simulation.</summary>
    DrainFaultTakenUp,

    /// <summary>From a day on dwell time is lost to alarms and pauses, which the book says nothing of but by its average dwell.</summary>
    LostDwell,

    /// <summary>From a day on weaker bags are used, and the book says otherwise.</summary>
    WeakerBags,

    /// <summary>From a day on the day is filled with less, and the book says otherwise.</summary>
    SmallerDay,

    /// <summary>From a day on plasma glucose is high, and the book does not say so.</summary>
    HighPlasmaGlucose,

    /// <summary>From a day on the book's total counts the day as well, and does not say so.</summary>
    CountsOtherwise,
}
