namespace Transport;

/// <summary>By which formula body water is taken from size; the same person's Kt/V differs by several percent between them.</summary>
public enum BodyWaterFormula
{
    /// <summary>Adults; Watson et al. 1980.</summary>
    Watson,

    /// <summary>Adults, without age; Hume and Weyers 1971.</summary>
    HumeWeyers,

    /// <summary>Children on peritoneal dialysis, 1 month and older; Morgenstern et al. 2006.</summary>
    Morgenstern,
}
