using System.Collections.Immutable;

namespace Transport;

/// <summary>Concentrations of nouns as vectors in the order of a panel, mmol/L; proteins relative to their plasma level.</summary>
internal static class CavityContents
{
    public static double[] Of(PlasmaComposition plasma, SolutePanel panel)
    {
        var contents = new double[panel.Count];
        Write(plasma, panel, contents);
        return contents;
    }

    public static double[] Of(ResidualFluid fluid, SolutePanel panel)
    {
        var contents = new double[panel.Count];
        Write(fluid, panel, contents);
        return contents;
    }

    public static double[] Of(DialysisSolution solution, SolutePanel panel)
    {
        var contents = new double[panel.Count];
        Write(solution, panel, contents);
        return contents;
    }

    public static void Write(PlasmaComposition plasma, SolutePanel panel, Span<double> into)
    {
        WriteSmall(into, plasma.Urea, plasma.Creatinine, plasma.Glucose, plasma.Sodium);
        for (var i = SolutePanel.Sodium + 1; i < panel.Count; i++)
        {
            var solute = panel.Solutes[i];
            into[i] = Solutes.IsProtein(solute) ? 1 : Stated(plasma.Others, panel, i, "Plasma");
        }
    }

    public static void Write(ResidualFluid fluid, SolutePanel panel, Span<double> into)
    {
        WriteSmall(into, fluid.Urea, fluid.Creatinine, fluid.Glucose, fluid.Sodium);
        for (var i = SolutePanel.Sodium + 1; i < panel.Count; i++)
        {
            var solute = panel.Solutes[i];
            into[i] = Solutes.IsProtein(solute) ? ResidualProtein(solute) : Stated(fluid.Others, panel, i, "The residual fluid");
        }
    }

    public static void Write(DialysisSolution solution, SolutePanel panel, Span<double> into)
    {
        WriteSmall(into, default, default, solution.Glucose, solution.Sodium);
        for (var i = SolutePanel.Sodium + 1; i < panel.Count; i++)
        {
            var solute = panel.Solutes[i];
            into[i] = (i >= panel.PolymerStart ? OfPolymer(solution, solute) : solution.Others.GetValueOrDefault(solute)).MillimolesPerLiter;
        }
    }

    /// <summary>A polymer's fraction in a fresh solution: none where the solution has no polymer or another.</summary>
    public static Concentration OfPolymer(DialysisSolution solution, Solute fraction) => solution.Polymer?.ConcentrationOf(fraction) ?? default;

    // After an ordinary dwell, relative to plasma (the golden dwells' choice).
    private static double ResidualProtein(Solute solute) =>
        solute == Solutes.Beta2Microglobulin ? 0.1 : solute == Solutes.Albumin ? 0.01 : 0.005;

    // Of a polymer there is none where nothing is stated: the first dwell. Everything else is measured or not followed.
    private static double Stated(ImmutableDictionary<Solute, Concentration> others, SolutePanel panel, int index, string where) =>
        others.TryGetValue(panel.Solutes[index], out var concentration) ? concentration.MillimolesPerLiter
            : index >= panel.PolymerStart ? 0
            : throw new ArgumentException($"{where} does not state {panel.Solutes[index]}, which the panel follows.", nameof(others));

    private static void WriteSmall(
        Span<double> into, Concentration urea, Concentration creatinine, Concentration glucose, Concentration sodium)
    {
        into[SolutePanel.Urea] = urea.MillimolesPerLiter;
        into[SolutePanel.Creatinine] = creatinine.MillimolesPerLiter;
        into[SolutePanel.Glucose] = glucose.MillimolesPerLiter;
        into[SolutePanel.Sodium] = sodium.MillimolesPerLiter;
    }
}
