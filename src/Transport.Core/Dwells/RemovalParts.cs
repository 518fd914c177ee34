namespace Transport;

/// <summary>By which ways a solute has come into the cavity since the start of a dwell; their sum is what was removed.</summary>
/// <param name="Convection">
/// What the fluid that crossed the membrane would have carried at the concentration of the side it came from: plasma's where it came in, dialysate's
/// where it was reabsorbed, each time the part 1 − σ that its path lets pass.
/// </param>
/// <param name="Diffusion">
/// The rest of what crossed the membrane: of pores PS Pe/(e^Pe − 1) (P − D), Pe the size of the Péclet number, which is less than diffusion alone
/// would do. Zero without a gradient and zero without permeability.
/// </param>
/// <param name="TakenBack">What left the cavity as it was: with lymph, with fluid lost into tissue, or with a classical membrane's absorption.</param>
/// <remarks>
/// The reference has to be said, because only the sum is physical: with the mean of both sides, or with plasma throughout, a part of diffusion goes
/// by the name of convection. This one is the only one under which a pore that cannot diffuse has no diffusion, in either direction (choice).
/// </remarks>
public readonly record struct RemovalParts(AmountOfSubstance Convection, AmountOfSubstance Diffusion, AmountOfSubstance TakenBack)
{
    /// <summary>The net amount from the blood: convection and diffusion less what was taken back.</summary>
    public AmountOfSubstance Net => Convection + Diffusion - TakenBack;
}
