namespace Transport.Analysis;

/// <summary>One filled row, trimmed, nothing interpreted yet.</summary>
internal sealed record SheetRow(int Row, string Section, string Item, string Time, string Value, string Unit, string Remark);
