using System.Collections;
using System.Globalization;
using System.Net;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text;
using Microsoft.DotNet.Interactive.Formatting;

namespace Transport.Notebooks;

/// <summary>One record of the library as a table of two columns, for the nouns that have no report or chart of their own.</summary>
internal static class RecordFacts
{
    private const int ValuesInSight = 6;

    /// <summary>Registers this view for every public noun of an assembly. A view registered afterwards takes its place.</summary>
    public static void Register(Assembly assembly)
    {
        foreach (var type in assembly.GetExportedTypes().Where(IsNoun))
        {
            Formatter.Register(type, (value, writer) => writer.Write(ToText(value)), MediaType.PlainText);
            Formatter.SetPreferredMimeTypesFor(type, MediaType.PlainText);
            if (!SaysItself(type))
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
                $"<th scope=\"row\" style=\"text-align:left;font-weight:normal\">{WebUtility.HtmlEncode(what)}</th><td style=\"text-align:left\">{WebUtility.HtmlEncode(text)}</td></tr>");
        }

        return html.Append("</tbody></table>").ToString();
    }

    private static string ToText(object value)
    {
        if (SaysItself(value.GetType()))
            return value.ToString()!;
        var facts = Facts(value).ToList();
        var width = facts.Select(fact => fact.What.Length).DefaultIfEmpty().Max();
        return string.Join('\n', facts.Select(fact => $"{fact.What.PadRight(width)}  {fact.Text}"));
    }

    private static IEnumerable<(string What, string Text)> Facts(object value) =>
        from property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
        where property.GetIndexParameters().Length == 0 && !property.PropertyType.IsAssignableTo(typeof(Delegate)) && !property.PropertyType.IsByRefLike
        let text = TextOf(property, value)
        where text is not null
        select (CellWords.TitleOf(property.Name), text);

    // Null for what cannot be said, such as a property that this state does not have.
    private static string? TextOf(PropertyInfo property, object of)
    {
        try
        {
            return TextOf(property.GetValue(of));
        }
        catch (TargetInvocationException)
        {
            return null;
        }
    }

    private static string TextOf(object? value)
    {
        if (value is IEnumerable and not string)
        {
            var items = ((IEnumerable)value).Cast<object?>().Take(ValuesInSight + 1).ToList();
            return items.Count == 0 ? "none"
                : items.Count <= ValuesInSight && items.All(item => item is null || item is not Finding && SaysItself(item.GetType())) ? string.Join("; ", items.Select(TextOf))
                : value is ICollection { Count: var count } ? string.Create(CultureInfo.InvariantCulture, $"{count} of them") : "several";
        }

        return value is null || SaysItself(value.GetType())
            ? CellWords.TextOf(value, value is double number ? CellWords.DecimalsFor([number]) : 0)
            : CellWords.TitleOf(value.GetType().Name);
    }

    private static bool IsNoun(Type type) =>
        !type.IsEnum && !type.IsInterface && !type.ContainsGenericParameters && !type.IsByRefLike && !(type.IsAbstract && type.IsSealed)
        && !type.IsAssignableTo(typeof(Delegate)) && !type.IsAssignableTo(typeof(Exception)) && !type.IsAssignableTo(typeof(IEnumerable));

    // Numbers, texts and names, and what has words written by hand: the dump of a record is the compiler's.
    private static bool SaysItself(Type type) =>
        type.IsPrimitive || type.IsEnum || type == typeof(string) || !type.Assembly.GetName().Name!.StartsWith("Transport.", StringComparison.Ordinal)
        || type.GetMethod(nameof(ToString), Type.EmptyTypes) is { } words && words.DeclaringType!.Assembly == type.Assembly && !words.IsDefined(typeof(CompilerGeneratedAttribute));
}
