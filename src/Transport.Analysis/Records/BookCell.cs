namespace Transport.Analysis;

/// <summary>A cell as it stands in a book.</summary>
/// <param name="Column">Its column; empty where that is not certain.</param>
/// <param name="Text">What is written there.</param>
/// <param name="IsWords">Whether it is read as free words: that is what its column is for, or what is written there is nothing that its column takes.</param>
internal sealed record BookCell(string Column, string Text, bool IsWords);
