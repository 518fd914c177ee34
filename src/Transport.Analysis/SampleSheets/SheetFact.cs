namespace Transport.Analysis;

/// <summary>One fact of a sheet about the patient or the test, as written.</summary>
/// <param name="Row">Row in the file, counted from 1.</param>
/// <param name="Item">The item under its main name, whatever synonym the sheet used.</param>
/// <param name="Text">The value as written.</param>
/// <param name="Unit">The unit as written; empty where none was.</param>
/// <param name="Remark">The remark; empty where none was.</param>
public sealed record SheetFact(int Row, string Item, string Text, string Unit, string Remark);
