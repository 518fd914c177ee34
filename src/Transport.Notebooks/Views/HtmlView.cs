namespace Transport.Notebooks;

/// <summary>A value that is shown in a notebook as ready-made HTML.</summary>
/// <param name="Html">The markup, shown as it is: text in it is already escaped, and it refers to nothing outside the page.</param>
/// <param name="Text">The same content in plain words, for a reader or a front end without HTML.</param>
public sealed record HtmlView(string Html, string Text);
