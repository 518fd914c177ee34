using System.Globalization;

namespace Transport;

/// <summary>How probable something is over an ensemble, and which doubt that holds.</summary>
/// <param name="Value">0 to 1.</param>
/// <param name="Doubt">Which layers of doubt it holds.</param>
public readonly record struct Probability(double Value, Doubt Doubt)
{
    /// <summary>As a frequency, which readers take in more surely than a share: "about 3 days in 10", "fewer than 1 in 10".</summary>
    /// <param name="one">One of what is counted: "day"; empty where it need not be said.</param>
    public string InTen(string one = "") => InTen((int)Math.Round(10 * Value), one);

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

    /// <summary>Shares of one whole as tenths that add up to ten, by largest remainder: rounded one by one they need not. Of equal remainders the last is served first.</summary>
    internal static int[] Tenths(params ReadOnlySpan<double> shares)
    {
        var tenths = new int[shares.Length];
        var rest = new double[shares.Length];
        for (var i = 0; i < shares.Length; i++)
        {
            tenths[i] = (int)Math.Floor(10 * shares[i] + 1e-9);
            rest[i] = 10 * shares[i] - tenths[i];
        }

        foreach (var i in Enumerable.Range(0, shares.Length).OrderByDescending(i => Math.Round(rest[i], 9)).ThenByDescending(i => i).Take(10 - tenths.Sum()))
        {
            tenths[i]++;
        }

        return tenths;
    }

    /// <summary>"0.93".</summary>
    public override string ToString() => Value.ToString("0.00", CultureInfo.InvariantCulture);
}
