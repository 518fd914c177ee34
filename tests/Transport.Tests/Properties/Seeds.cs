namespace Transport.Tests.Properties;

internal static class Seeds
{
    /// <summary>Property tests are repeatable: this seed, unless a test says otherwise. (FsCheck: seed, odd gamma.)</summary>
    public const string Fixed = "20240501,7919";
}
