using Microsoft.AspNetCore.Html;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Events;
using Microsoft.DotNet.Interactive.Formatting;

namespace Transport.Notebooks;

/// <summary>What a cell may call without a prefix, and how it learns that it was interrupted.</summary>
public static class Cell
{
    /// <summary>
    /// Stops a run with its cell, and shows how far it is: <c>RegimenSearch.Run(…, control: Cell.Control)</c>. Outside a cell it does neither.
    /// </summary>
    public static RunControl Control => new() { Cancellation = KernelInvocationContext.Current?.CancellationToken ?? default, Progress = Watcher };

    /// <summary>Who is told how far the running cell is; null where nobody watches. There is one session in a process.</summary>
    internal static IProgress<double>? Watcher { get; set; }

    /// <summary>Shows a value now, before the cell ends.</summary>
    /// <param name="value">Anything; shown as it would be as a cell's last expression.</param>
    /// <param name="mimeTypes">The forms to show; none means its usual ones.</param>
    /// <returns>What was shown; its <c>Update(other)</c> replaces it where it stands.</returns>
    /// <exception cref="InvalidOperationException">No cell is running.</exception>
    /// <remarks>The package's own function gives the update another identity than the display.</remarks>
    public static DisplayedValue display(object? value, params string[] mimeTypes)
    {
        var context = KernelInvocationContext.Current ?? throw new InvalidOperationException("Only a running cell can display.");
        var forms = FormattedValue.CreateManyFromObject(value, mimeTypes);
        var displayed = new DisplayedValue(value, forms);
        context.Publish(new DisplayedValueProduced(value, context.Command, forms, displayed.DisplayId));
        return displayed;
    }

    /// <summary>Markup that is shown as it is; text in it must already be escaped.</summary>
    public static IHtmlContent HTML(string markup) => new HtmlString(markup);
}
