namespace Transport.Tests.Membrane;

internal static class Known
{
    public static Solute Solute(string name) =>
        SolutePanel.Full.Solutes.Append(Solutes.SodiumAnion).Single(solute => solute.Name == name);
}
