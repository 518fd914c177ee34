namespace Transport;

/// <summary>Which formulas say how a pore hinders a solute. They belong to a membrane, because its other numbers are true only with them.</summary>
public enum HindranceForm
{
    /// <summary>The pair of the three-pore literature, and the default: it reproduces a published table (Sci Rep 2020, read).</summary>
    ThreePore,

    /// <summary>
    /// Diffusion as by default; σ = 16/3 λ² − 20/3 λ³ + 7/3 λ⁴, also printed in that literature (memory). About 10 % more at small λ.
    /// </summary>
    PolynomialReflection,

    /// <summary>
    /// Dechadilok and Deen, Ind Eng Chem Res 2006;45:6953 (memory): diffusion by their H, stated for λ up to 0.95; σ = 1 − W of convection, whose
    /// use as an osmotic coefficient is a choice. It raises the textbook's osmotic conductance to glucose by 27 %: refit LpS.
    /// </summary>
    DechadilokDeen,
}
