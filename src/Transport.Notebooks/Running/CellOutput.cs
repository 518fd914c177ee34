namespace Transport.Notebooks;

/// <summary>One thing a cell showed. Nothing in it tells when or where the cell ran, so equal runs give equal outputs.</summary>
internal abstract record CellOutput
{
    private CellOutput()
    {
    }

    /// <summary>Text written to <c>stdout</c> or <c>stderr</c>.</summary>
    internal sealed record Stream(string Name, string Text) : CellOutput;

    /// <summary>A displayed value in every form it has, keyed by media type.</summary>
    /// <param name="Forms">Media type to text; JSON forms are JSON text.</param>
    /// <param name="IsResult">True for the cell's last expression, false for <c>display(x)</c>.</param>
    /// <param name="DisplayId">The kernel's name for the value while the session lives, so that it can be updated. Never written.</param>
    /// <param name="IsUpdate">True when this replaces the value shown earlier under the same id.</param>
    internal sealed record Display(
        IReadOnlyDictionary<string, string> Forms, bool IsResult, string? DisplayId, bool IsUpdate = false) : CellOutput;

    /// <summary>Appends one output as it arrives: joins what one stream wrote in a row, puts an update in its place.</summary>
    public static void Append(List<CellOutput> outputs, CellOutput next)
    {
        switch (next)
        {
            case Stream stream when outputs.LastOrDefault() is Stream last && last.Name == stream.Name:
                outputs[^1] = last with { Text = last.Text + stream.Text };
                break;
            case Display { IsUpdate: true } update:
                for (var i = 0; i < outputs.Count; i++)
                {
                    if (outputs[i] is Display shown && shown.DisplayId == update.DisplayId)
                        outputs[i] = shown with { Forms = update.Forms };
                }

                break;
            default:
                outputs.Add(next);
                break;
        }
    }
}
