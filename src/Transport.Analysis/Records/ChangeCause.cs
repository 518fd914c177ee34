namespace Transport.Analysis;

/// <summary>What a lasting change of the nights may come from.</summary>
public enum ChangeCause
{
    /// <summary>The membrane transfers faster: glucose is lost sooner.</summary>
    FasterTransfer,

    /// <summary>Osmotic conductance has fallen: the same glucose draws less water.</summary>
    LowerConductance,

    /// <summary>More fluid is taken up by lymph and tissue, or leaks.</summary>
    MoreFluidLoss,

    /// <summary>Each drain leaves a share behind: catheter, position, constipation.</summary>
    DrainTrouble,

    /// <summary>Dwell time is lost of which the book says nothing: alarms, pauses, a late start.</summary>
    LostDwell,

    /// <summary>What was run differs from the prescription, or the book does: strength, bags, time.</summary>
    RunDiffers,

    /// <summary>The day's exchange: its fill, fluid or hours are not those that are written, or it takes up more or less than it did.</summary>
    DayDiffers,

    /// <summary>Plasma glucose is high and holds the water back.</summary>
    HighPlasmaGlucose,

    /// <summary>The book counts otherwise than before, or a number comes from another line.</summary>
    BookCountsOtherwise,
}
