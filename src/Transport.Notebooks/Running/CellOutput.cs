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
    internal sealed record Display(IReadOnlyDictionary<string, string> Forms, bool IsResult) : CellOutput
    {
        /// <summary>Made from the cell's number and the order in it; null for what cannot be updated.</summary>
        public string? Id { get; init; }

        /// <summary>True when it replaces the display of the same id, which may stand in an earlier cell.</summary>
        public bool IsUpdate { get; init; }
    }

    /// <summary>Adds one output as it arrives; what one stream wrote in a row becomes one output, and an update replaces.</summary>
    /// <param name="outputs">The outputs of the running cell.</param>
    /// <param name="earlier">Those of the cells before it.</param>
    /// <param name="next">What has arrived.</param>
    public static void Append(List<CellOutput> outputs, IEnumerable<List<CellOutput>> earlier, CellOutput next)
    {
        if (next is Stream stream && outputs.LastOrDefault() is Stream last && last.Name == stream.Name)
        {
            outputs[^1] = last with { Text = last.Text + stream.Text };
        }
        else if (next is Display { IsUpdate: true } update)
        {
            foreach (var list in earlier.Append(outputs))
            {
                var place = list.FindIndex(output => output is Display shown && shown.Id == update.Id);
                if (place >= 0)
                    list[place] = (Display)list[place] with { Forms = update.Forms };
            }
        }
        else
        {
            outputs.Add(next);
        }
    }
}
