using static System.FormattableString;

namespace Transport;

/// <summary>Net ultrafiltration with the limits of its strength. Volume limits are those of adults after about 4 h; children get none.</summary>
internal sealed record UltrafiltrationCapacity(double Net, Threshold Low, Threshold? Near)
{
    public bool IsLow => Net < Low.Value;

    /// <summary>Null where no limit applies.</summary>
    public static UltrafiltrationCapacity? Of(EquilibrationIndices indices)
    {
        var (limits, test) = (indices.Options.Thresholds, indices.Test);
        var isAboutFourHours = Math.Abs(test.Dwell.TotalMinutes - 240) <= limits.ClassTolerance.Value;
        return indices.NetUltrafiltration is not { } net || !isAboutFourHours || test.Patient.AgeYears < limits.AdultAge.Value ? null
            : indices.IsStrong ? new(net.Value, limits.LowUltrafiltrationStrong, null)
            : indices.IsMiddle ? new(net.Value, limits.LowUltrafiltrationMiddle, limits.NearUltrafiltrationMiddle)
            : null;
    }

    public static bool IsOverfillUnknown(EquilibrationTest test) => test.FillBasis == FillBasis.Label && test.Overfill is null;

    public static string Found(EquilibrationIndices indices, double net) =>
        Invariant($"{net:0} mL after {indices.Test.Dwell.TotalMinutes:0} min of {indices.Test.Solution.Name}, fill {indices.Test.EnteredVolume.Milliliters:0} mL ({(indices.Test.FillBasis == FillBasis.Measured ? "measured" : IsOverfillUnknown(indices.Test) ? "label, overfill unknown" : "label plus overfill")})");
}
