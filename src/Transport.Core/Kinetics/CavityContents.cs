namespace Transport;

/// <summary>Concentrations of nouns as vectors in the order of a panel, mmol/L; proteins relative to their plasma level.</summary>
internal static class CavityContents
{
    // Residual protein after an ordinary dwell, relative to plasma: β2-microglobulin, albumin, IgG (the golden dwells' choice).
    private static readonly double[] ResidualProtein = [0.1, 0.01, 0.005];

    public static double[] Of(PlasmaComposition plasma, SolutePanel panel) =>
        Vector(panel, plasma.Urea, plasma.Creatinine, plasma.Glucose, plasma.Sodium, protein: _ => 1);

    public static double[] Of(ResidualFluid fluid, SolutePanel panel) =>
        Vector(panel, fluid.Urea, fluid.Creatinine, fluid.Glucose, fluid.Sodium, protein: index => ResidualProtein[index]);

    public static double[] Of(DialysisSolution solution, SolutePanel panel) =>
        Vector(panel, default, default, solution.Glucose, solution.Sodium, protein: _ => 0);

    private static double[] Vector(
        SolutePanel panel, Concentration urea, Concentration creatinine, Concentration glucose, Concentration sodium, Func<int, double> protein)
    {
        var vector = new double[panel.Count];
        vector[SolutePanel.Urea] = urea.MillimolesPerLiter;
        vector[SolutePanel.Creatinine] = creatinine.MillimolesPerLiter;
        vector[SolutePanel.Glucose] = glucose.MillimolesPerLiter;
        vector[SolutePanel.Sodium] = sodium.MillimolesPerLiter;
        for (var i = SolutePanel.Sodium + 1; i < vector.Length; i++)
        {
            vector[i] = protein(i - SolutePanel.Sodium - 1);
        }

        return vector;
    }
}
