using System.Collections.Immutable;

namespace Transport;

/// <summary>Concentrations of solutes beyond urea, creatinine, glucose and sodium.</summary>
internal static class OtherSolutes
{
    /// <summary>None of them. One instance, so that fluids that state none are equal.</summary>
    public static ImmutableDictionary<Solute, Concentration> None { get; } = ImmutableDictionary<Solute, Concentration>.Empty;

    /// <summary>Those that are always followed, and therefore stated elsewhere.</summary>
    public static bool IsAlwaysFollowed(Solute solute) => solute == Solutes.SodiumAnion || SolutePanel.Small.Solutes.Contains(solute);

    public static ImmutableDictionary<Solute, Concentration> Check(ImmutableDictionary<Solute, Concentration> concentrations)
    {
        ArgumentNullException.ThrowIfNull(concentrations);
        foreach (var (solute, concentration) in concentrations)
        {
            if (IsAlwaysFollowed(solute) || Solutes.IsProtein(solute))
            {
                throw new ArgumentException(
                    $"{solute} does not belong here: it has a property of its own, or is followed relative to plasma.", nameof(concentrations));
            }

            Require.NotNegative(concentration.MillimolesPerLiter, "mmol/L", solute.Name);
        }

        return concentrations;
    }
}
