using System.Collections.Immutable;

namespace Transport;

/// <summary>A regimen that cannot be carried out. It names everything that stands against it, not only the first.</summary>
public sealed class RegimenException : Exception
{
    internal RegimenException(IEnumerable<Finding> findings)
        : this([.. findings])
    {
    }

    private RegimenException(ImmutableArray<Finding> findings)
        : base(string.Join(' ', findings.Where(finding => finding.Severity == Severity.Error).Select(finding => finding.Message)))
    {
        Findings = findings;
    }

    /// <summary>Every problem and caution, problems first.</summary>
    public ImmutableArray<Finding> Findings { get; }
}
