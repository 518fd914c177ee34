namespace Transport;
/// <summary>x.</summary>
public static class PlaceholderAnalysis { }
