using System.Text.RegularExpressions;

namespace Transport.Analysis;

/// <summary>A cell as it stands in a book.</summary>
/// <param name="Column">Its column; empty where that is not certain.</param>
/// <param name="Text">What is written there.</param>
/// <param name="IsWords">Whether it is read as free words: that is what its column is for, or what is written there is nothing that its column takes.</param>
internal sealed partial record BookCell(string Column, string Text, bool IsWords)
{
    /// <summary>Its words as they read without the column: brown is the fluid, HI and a number the meter.</summary>
    public string Words => Column == BookWords.Effluent.Name ? Foggy().Replace(OfFluid().Replace(Text, "brown fluid"), "foggy fluid")
        : Column == BookWords.BloodGlucose.Name && Meter().IsMatch(Text) ? "glucose " + Text
        : Text;

    [GeneratedRegex(@"\b(?:brown|brownish|green|greenish|stool|faecal|fecal|faeculent|feculent|faeces|feces|poo|tea|coffee|rusty|muddy|foul)\b", RegexOptions.IgnoreCase)]
    private static partial Regex OfFluid();

    [GeneratedRegex(@"\b(?:foggy|fog)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Foggy();

    // HI and LO as meters show them and no meal; and a number with words, which stands for no other thing.
    [GeneratedRegex(@"^\s*(?:(?:too |very )?(?:hi|high|lo|low)\b(?! (?:fat|carbs?|carbohydrates?|salt|protein|fibre|fiber|calories?|gi|energy|tea|mood|battery)\b)|[0-9]{1,2}[.,][0-9]{1,2}\b|[0-9]{1,3}(?= ?(?:$|[,;(]|mmol|mg|then|before|after|now|again|fasting)))", RegexOptions.IgnoreCase)]
    private static partial Regex Meter();
}
