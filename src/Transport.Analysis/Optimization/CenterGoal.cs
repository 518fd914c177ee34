namespace Transport.Analysis;

/// <summary>A goal that is judged at the ensemble's center and that residual kidney function shares in.</summary>
public enum CenterGoal
{
    /// <summary>None.</summary>
    None,

    /// <summary>The floor of the fluid range.</summary>
    FluidFloor,

    /// <summary>The clearance goal.</summary>
    Clearance,
}
