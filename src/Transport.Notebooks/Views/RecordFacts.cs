using System.Collections;
using System.Globalization;
using System.Net;
using System.Reflection;
using System.Text;
using Microsoft.DotNet.Interactive.Formatting;

namespace Transport.Notebooks;

/// <summary>One record of the library as a table of two columns, for the nouns that have no report or chart of their own.</summary>
internal static class RecordFacts
{
    /// <summary>Registers this view for every public noun of an assembly. A view registered afterwards takes its place.</summary>
    public static void Register(Assembly assembly)
    {
        foreach (var type in assembly.GetExportedTypes().Where(IsNoun))
        {
            Formatter.Register(type, (value, writer) => writer.Write(ToText(value)), MediaType.PlainText);
            Formatter.SetPreferredMimeTypesFor(type, MediaType.PlainText);
            if (!CellWords.SaysItself(type))
            {
                Formatter.Register(type, (value, writer) => writer.Write(ToHtml(value)), MediaType.Html);
                Formatter.SetPreferredMimeTypesFor(type, MediaType.Html, MediaType.PlainText);
            }
        }
    }

    private static string ToHtml(object value)
    {
        var html = new StringBuilder($"<table style=\"{TableStyle.Table}\"><tbody>");
        foreach (var (what, text) in Facts(value))
        {
            html.Append(TableStyle.RowStart).Append(CultureInfo.InvariantCulture,
                $"<th scope=\"row\" style=\"text-align:left;font-weight:normal\">{WebUtility.HtmlEncode(what)}</th><td style=\"text-align:left\">{Typeset.Whole(WebUtility.HtmlEncode(text))}</td></tr>");
        }

        return html.Append("</tbody></table>").ToString();
    }

    private static string ToText(object value)
    {
        if (CellWords.SaysItself(value.GetType()))
            return value.ToString()!;
        var facts = Facts(value).ToList();
        var width = facts.Select(fact => fact.What.Length).DefaultIfEmpty().Max();
        return string.Join('\n', facts.Select(fact => $"{fact.What.PadRight(width)}  {fact.Text}"));
    }

    private static IEnumerable<(string What, string Text)> Facts(object value) =>
        from property in CellWords.PropertiesOf(value.GetType())
        let text = TextOf(property, value)
        where text is not null
        select (CellWords.TitleOf(property.Name), text);

    // Null for what cannot be said, such as a property that this state does not have.
    private static string? TextOf(PropertyInfo property, object of)
    {
        try
        {
            return CellWords.TextOf(property.GetValue(of), property.GetValue(of) is double number ? CellWords.DecimalsFor([number]) : 0);
        }
        catch (TargetInvocationException)
        {
            return null;
        }
    }

    private static bool IsNoun(Type type) =>
        !type.IsEnum && !type.IsInterface && !type.ContainsGenericParameters && !type.IsByRefLike && !(type.IsAbstract && type.IsSealed)
        && !type.IsAssignableTo(typeof(Delegate)) && !type.IsAssignableTo(typeof(Exception)) && !type.IsAssignableTo(typeof(IEnumerable));
}
