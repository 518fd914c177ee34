namespace Transport.Analysis;

/// <summary>One row of a blank sheet.</summary>
/// <param name="Section">patient, test, a fluid, or a bag of a collection.</param>
/// <param name="Item">A fact or an analyte.</param>
/// <param name="Time">Minutes of dwell at which a sample is due; empty where none is meant.</param>
/// <param name="Value">What is already known, such as the form; empty where it is to be filled in.</param>
/// <param name="Unit">The unit, which a laboratory may replace by its own.</param>
/// <param name="Remark">What helps to fill it in; may be empty.</param>
public sealed record BlankRow(string Section, string Item, string Time, string Value, string Unit, string Remark);
