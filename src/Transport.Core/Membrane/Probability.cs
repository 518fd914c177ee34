using System.Globalization;

namespace Transport;

/// <summary>How probable something is over an ensemble, and which doubt that holds.</summary>
/// <param name="Value">0 to 1.</param>
/// <param name="Doubt">Which layers of doubt it holds.</param>
public readonly record struct Probability(double Value, Doubt Doubt)
{
    /// <summary>As a frequency, which readers take in more surely than a share: "about 3 days in 10", "fewer than 1 in 10".</summary>
    /// <param name="one">One of what is counted: "day"; empty where it need not be said.</param>
    public string InTen(string one = "") => InTen(Tenths(Value), one);

    /// <summary>So many in ten, in words.</summary>
    internal static string InTen(int tenths, string one = "")
    {
        var several = one.Length == 0 ? "" : $" {one}s";
        var single = one.Length == 0 ? "" : " " + one;
        return tenths switch
        {
            0 => $"fewer than 1{single} in 10",
            10 => $"more than 9{several} in 10",
            _ => string.Create(CultureInfo.InvariantCulture, $"about {tenths}{(tenths == 1 ? single : several)} in 10"),
        };
    }

    internal static int Tenths(double share) => (int)Math.Round(10 * share);

    /// <summary>"0.93".</summary>
    public override string ToString() => Value.ToString("0.00", CultureInfo.InvariantCulture);
}
