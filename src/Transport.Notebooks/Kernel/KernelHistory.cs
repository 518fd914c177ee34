using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace Transport.Notebooks;

/// <summary>The cells of this session, for a front end's "previous command". Nothing is kept on disk.</summary>
internal sealed class KernelHistory
{
    private readonly List<(int Cell, string Code)> _cells = [];

    public void Add(int cell, string code) => _cells.Add((cell, code));

    /// <summary>Answers a history request: the tail, a range, or what matches a pattern with <c>*</c> and <c>?</c>.</summary>
    public JsonObject Answer(JupyterMessage request)
    {
        var most = request.Number("n", int.MaxValue);
        IEnumerable<(int Cell, string Code)> found = request.Text("hist_access_type") switch
        {
            "tail" => _cells.TakeLast(most),
            "search" => Matching(request.Text("pattern", "*"), request.Flag("unique", false)).TakeLast(most),
            "range" when request.Number("session") == 0 => _cells.Where(
                entry => entry.Cell >= request.Number("start") && entry.Cell < request.Number("stop", int.MaxValue)),
            _ => [],
        };

        // Without outputs an entry is (session, line, input); with them, the last is a pair. Outputs are not kept.
        var withOutput = request.Flag("output", false);
        return new JsonObject
        {
            ["status"] = "ok",
            ["history"] = new JsonArray([.. found.Select(entry =>
                new JsonArray(0, entry.Cell, withOutput ? new JsonArray(entry.Code, null) : JsonValue.Create(entry.Code)))]),
        };
    }

    private IEnumerable<(int Cell, string Code)> Matching(string pattern, bool isUnique)
    {
        var expression = "^" + Regex.Escape(pattern).Replace("\\*", ".*", StringComparison.Ordinal).Replace("\\?", ".", StringComparison.Ordinal) + "$";
        var found = _cells.Where(entry => Regex.IsMatch(entry.Code, expression, RegexOptions.Singleline | RegexOptions.NonBacktracking));
        return isUnique ? found.Reverse().DistinctBy(entry => entry.Code).Reverse() : found;
    }
}
