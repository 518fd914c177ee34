using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>Words of danger that are written with a slip of the pen: "cloudly", "feaver", "diarrea".</summary>
/// <remarks>A word is one of danger where it begins with its letter and is one slip away (a letter too many, too few, another or two exchanged; of long words two) and is no word of its own.</remarks>
internal static partial class Misspelling
{
    private static readonly (string Word, int Slips)[] OfDanger =
    [
        ("cloudy", 1), ("turbid", 1), ("peritonitis", 2), ("stomach", 1), ("abdomen", 1), ("abdominal", 2), ("painful", 1), ("fever", 1), ("feverish", 1), ("shivering", 1), ("shivery", 1), ("shivers", 1), ("vomiting", 1), ("vomited", 1), ("nausea", 1),
        ("diarrhoea", 2), ("diarrhea", 2), ("breathless", 2), ("swollen", 1), ("swelling", 1), ("confused", 1), ("confusion", 1), ("dizzy", 1), ("dizziness", 1), ("drowsy", 1), ("collapsed", 1), ("seizure", 1), ("unconscious", 2), ("unresponsive", 2),
        ("slurred", 1), ("bleeding", 1), ("bloody", 1), ("leaking", 1), ("infected", 1), ("redness", 1), ("headache", 1), ("constipated", 2), ("temperature", 2), ("potassium", 2),
    ];

    // Words of their own, one slip away.
    private static readonly HashSet<string> OfTheirOwn =
    [
        "cloud", "clouds", "cloudier", "fewer", "fiver", "fevers", "vomit", "swollenness", "spelling", "selling", "dwelling", "smelling", "breeding", "blending", "bleating", "breading", "blood", "bloods", "bloodily", "leading", "leafing", "leaning", "leaping", "learning", "leasing", "leaving", "shelling", "swilling", "bleeping", "contusion", "constituted", "breathes", "breathers", "stomache", "injected",
        "inflected", "ejected", "slurped", "spurred", "blurred", "seizures", "stomachs", "abdomens", "headaches", "confuse", "confuses", "collapse", "collapses", "temperate", "temperatures", "nauseas", "swearing", "shimmering", "shiver", "slivers", "slivering", "dizzily",
    ];

    /// <summary>The same text with such words as they are spelled; in normal form.</summary>
    public static string Mended(string text) => Word().Replace(text, match => OfTheirOwn.Contains(match.Value) || Array.Exists(OfDanger, known => known.Word == match.Value)
        ? match.Value
        : Array.Find(OfDanger, known => known.Word[0] == match.Value[0] && Math.Abs(known.Word.Length - match.Value.Length) <= known.Slips && Slips(known.Word, match.Value) <= known.Slips).Word ?? match.Value);

    // Distance by insertions, deletions, other letters and two neighbors exchanged (optimal string alignment; the recurrence from memory).
    private static int Slips(string one, string other)
    {
        var d = new int[one.Length + 1, other.Length + 1];
        for (var i = 0; i <= one.Length; i++)
        {
            for (var j = 0; j <= other.Length; j++)
            {
                if (i == 0 || j == 0)
                {
                    d[i, j] = i + j;
                    continue;
                }

                d[i, j] = Math.Min(Math.Min(d[i - 1, j], d[i, j - 1]) + 1, d[i - 1, j - 1] + (one[i - 1] == other[j - 1] ? 0 : 1));
                if (i > 1 && j > 1 && one[i - 1] == other[j - 2] && one[i - 2] == other[j - 1])
                {
                    d[i, j] = Math.Min(d[i, j], d[i - 2, j - 2] + 1);
                }
            }
        }

        return d[one.Length, other.Length];
    }

    [GeneratedRegex("[a-z]{4,}")]
    private static partial Regex Word();
}
