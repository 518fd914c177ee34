using System.Collections.Immutable;

namespace Transport;

/// <summary>Concentrations of nouns as vectors in the order of a panel, mmol/L; proteins relative to their plasma level.</summary>
internal static class CavityContents
{
    public static double[] Of(PlasmaComposition plasma, SolutePanel panel) => Vector(
        panel, plasma.Urea, plasma.Creatinine, plasma.Glucose, plasma.Sodium,
        solute => Solutes.IsProtein(solute) ? 1 : Stated(plasma.Others, panel, solute, "Plasma"));

    public static double[] Of(ResidualFluid fluid, SolutePanel panel) => Vector(
        panel, fluid.Urea, fluid.Creatinine, fluid.Glucose, fluid.Sodium,
        solute => Solutes.IsProtein(solute) ? ResidualProtein(solute) : Stated(fluid.Others, panel, solute, "The residual fluid"));

    public static double[] Of(DialysisSolution solution, SolutePanel panel) => Vector(
        panel, default, default, solution.Glucose, solution.Sodium,
        solute => (panel.IsPolymer(solute) ? OfPolymer(solution, solute) : solution.Others.GetValueOrDefault(solute)).MillimolesPerLiter);

    /// <summary>A polymer's fraction in a fresh solution: none where the solution has no polymer or another.</summary>
    public static Concentration OfPolymer(DialysisSolution solution, Solute fraction) => solution.Polymer?.ConcentrationOf(fraction) ?? default;

    // After an ordinary dwell, relative to plasma (the golden dwells' choice).
    private static double ResidualProtein(Solute solute) =>
        solute == Solutes.Beta2Microglobulin ? 0.1 : solute == Solutes.Albumin ? 0.01 : 0.005;

    // Of a polymer there is none where nothing is stated: the first dwell. Everything else is measured or not followed.
    private static double Stated(ImmutableDictionary<Solute, Concentration> others, SolutePanel panel, Solute solute, string where) =>
        others.TryGetValue(solute, out var concentration) ? concentration.MillimolesPerLiter
            : panel.IsPolymer(solute) ? 0
            : throw new ArgumentException($"{where} does not state {solute}, which the panel follows.", nameof(solute));

    private static double[] Vector(
        SolutePanel panel, Concentration urea, Concentration creatinine, Concentration glucose, Concentration sodium, Func<Solute, double> other) =>
    [
        urea.MillimolesPerLiter,
        creatinine.MillimolesPerLiter,
        glucose.MillimolesPerLiter,
        sodium.MillimolesPerLiter,
        .. panel.Solutes.Skip(SolutePanel.Sodium + 1).Select(other),
    ];
}
