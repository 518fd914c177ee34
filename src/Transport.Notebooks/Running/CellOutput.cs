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
    internal sealed record Display(IReadOnlyDictionary<string, string> Forms, bool IsResult) : CellOutput;

    /// <summary>Appends one output as it arrives; what one stream wrote in a row becomes one output.</summary>
    public static void Append(List<CellOutput> outputs, CellOutput next)
    {
        if (next is Stream stream && outputs.LastOrDefault() is Stream last && last.Name == stream.Name)
            outputs[^1] = last with { Text = last.Text + stream.Text };
        else
            outputs.Add(next);
    }
}
