namespace Transport.Reporting;

/// <summary>One sheet of paper for the file, twice: to print and to paste.</summary>
/// <param name="Title">What it is and whose: "Equilibration test · MV-01 · 2025-03-11".</param>
/// <param name="Html">A document of its own without script, network or other file. It prints on one A4 page, in grey too.</param>
/// <param name="Markdown">The same words and tables; pictures in words. Holds all findings where the paper names only the gravest in full.</param>
public sealed record ReportPage(string Title, string Html, string Markdown);
