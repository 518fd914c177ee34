namespace Transport.Analysis;

/// <summary>What the data say of one model beside the best of several.</summary>
public enum ModelVerdict
{
    /// <summary>It foretells the data best, if only by a little.</summary>
    Best,

    /// <summary>The data do not tell it from the best: it is behind by at most 4, where two models predict alike.</summary>
    NotTold,

    /// <summary>It is behind by more than 4, but by no more than twice the error of the difference: few data carry it.</summary>
    Leaning,

    /// <summary>It is behind by more than 4 and by more than twice the error of the difference.</summary>
    Told,
}
