namespace Transport;

/// <summary>Layers of doubt in words.</summary>
public static class DoubtWords
{
    /// <summary>"parameters and model form"; "no doubt" where there is none.</summary>
    public static string Words(this Doubt doubt)
    {
        string[] held =
        [
            .. new[] { (Doubt.Parameters, "parameters"), (Doubt.Posture, "posture"), (Doubt.ModelForm, "model form"), (Doubt.NightToNight, "night to night") }
                .Where(layer => doubt.HasFlag(layer.Item1)).Select(layer => layer.Item2),
        ];
        return held.Length switch
        {
            0 => "no doubt",
            1 => held[0],
            _ => $"{string.Join(", ", held[..^1])} and {held[^1]}",
        };
    }
}
