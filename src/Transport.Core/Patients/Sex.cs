namespace Transport;

/// <summary>Sex, as the body-water and generation formulas use it.</summary>
public enum Sex
{
    /// <summary>Female.</summary>
    Female,

    /// <summary>Male.</summary>
    Male,
}
