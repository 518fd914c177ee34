namespace Transport.Notebooks;

/// <summary>The forms an output may have.</summary>
internal static class MediaType
{
    public const string PlainText = "text/plain";
    public const string Html = "text/html";
    public const string Svg = "image/svg+xml";
    public const string Json = "application/json";

    /// <summary>An interactive chart: one JSON object with <c>data</c>, <c>layout</c> and <c>config</c>.</summary>
    public const string PlotlySpec = "application/vnd.plotly.v1+json";

    public static bool IsJson(string mediaType) =>
        mediaType == Json || mediaType.EndsWith("+json", StringComparison.Ordinal);
}
