namespace Transport.Analysis;

/// <summary>How a figure stands to a target.</summary>
public enum Assessment
{
    /// <summary>It cannot be said: the figure is missing, or the target is for other patients.</summary>
    NotAssessable,

    /// <summary>The median comes up to it.</summary>
    Met,

    /// <summary>The median falls short of it.</summary>
    NotMet,
}
