namespace Transport;

/// <summary>One solute's well-mixed pool behind the membrane, in mL, min, µmol.</summary>
/// <param name="Solute">Which solute of the panel.</param>
/// <param name="Volume">V_b, mL.</param>
/// <param name="OtherClearance">By the kidneys and whatever else is not the membrane, mL/min.</param>
/// <param name="Generation">G, µmol/min.</param>
/// <param name="BloodSide">What the membrane faces as a multiple of the plasma concentration.</param>
/// <param name="UsualLevel">The plasma concentration about which it moves, mmol/L: a scale, no condition.</param>
internal readonly record struct BodyPool(
    int Solute, double Volume, double OtherClearance, double Generation, double BloodSide, double UsualLevel);
