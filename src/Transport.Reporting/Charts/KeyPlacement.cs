namespace Transport.Reporting;

/// <summary>Where a reader finds the names of the lines.</summary>
public enum KeyPlacement
{
    /// <summary>At the right end of each line. Bands and lone points, which have no end, are named below the figure.</summary>
    LineEnds,

    /// <summary>All in one legend below the figure, shared by its panels.</summary>
    Below,

    /// <summary>Nowhere: the axes say it all, as where each panel has one line.</summary>
    None,
}
