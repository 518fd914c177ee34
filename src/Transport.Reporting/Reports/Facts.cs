using static System.FormattableString;

namespace Transport.Reporting;

/// <summary>What a noun holds, as a small table with units.</summary>
public static class Facts
{
    /// <summary>A membrane's parameters, at the size of its person.</summary>
    public static ReportBlock Of(ThreePoreMembrane membrane)
    {
        ArgumentNullException.ThrowIfNull(membrane);
        var pores = membrane.Pores;
        return Table(
            ("A0/Δx", Digits.Of(membrane.DiffusionArea.Centimeters, 4), "cm"),
            ("glucose permeability scale", Digits.Of(membrane.GlucosePermeabilityScale), ""),
            ("urea permeability over creatinine's", membrane.UreaToCreatininePermeability is { } ratio ? Digits.Of(ratio) : "by radius", ""),
            ("sodium permeability", Digits.Of(membrane.SodiumPermeability.MillilitersPerMinute), "mL/min"),
            ("LpS", Digits.Of(membrane.UltrafiltrationCoefficient.MillilitersPerMinutePerMillimeterOfMercury), "mL/min/mmHg"),
            ("osmotic conductance to glucose", Digits.Of(membrane.OsmoticConductanceToGlucose.MicrolitersPerMinutePerMillimeterOfMercury), "µL/min/mmHg"),
            ("shares of LpS: ultrasmall, small, large", Invariant($"{Digits.Percent(pores.UltrasmallFraction)}, {Digits.Percent(pores.SmallFraction)}, {Digits.Percent(pores.LargeFraction)}"), ""),
            ("radii: small, large", Invariant($"{Digits.Of(pores.SmallRadiusAngstrom)}, {Digits.Of(pores.LargeRadiusAngstrom)}"), "Å"),
            ("lymphatic removal", Digits.Of(membrane.LymphaticRemoval.MillilitersPerMinute), "mL/min"),
            ("initial transient F0, τ", Invariant($"{Digits.Of(membrane.TransientAmplitude)}, {Digits.Hours(membrane.TransientTime)}"), ""),
            ("true with", membrane.PlasmaLevel == PlasmaLevel.AsMeasured ? "plasma as measured" : "plasma water", ""));
    }

    /// <summary>The conditions of a test; its indices say what it means.</summary>
    public static ReportBlock Of(EquilibrationTest test)
    {
        ArgumentNullException.ThrowIfNull(test);
        return Table(
            ("solution", test.Solution.Name, ""),
            ("instilled", Digits.Fixed(test.InstilledVolume.Milliliters, 0), test.FillBasis == FillBasis.Measured ? "mL, measured" : "mL, by the label"),
            ("drained", test.DrainedVolume is { } drained ? Digits.Fixed(drained.Milliliters, 0) : "not measured", test.DrainedVolume is null ? "" : "mL"),
            ("dwell", Digits.Hours(test.Dwell), ""),
            ("dialysate samples", string.Join(", ", test.Dialysate.Select(sample => Digits.Fixed(sample.Time.TotalMinutes, 0))), "min"),
            ("date", test.Date?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) ?? "not written down", ""));
    }

    /// <summary>Size and kidneys of a patient.</summary>
    public static ReportBlock Of(Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        return Table(
            ("code", patient.Code.Length == 0 ? "none" : patient.Code, ""),
            ("sex, age", Invariant($"{(patient.Sex == Sex.Female ? "female" : "male")}, {Digits.Of(patient.AgeYears)}"), "years"),
            ("height, weight", Invariant($"{Digits.Of(patient.Height.Centimeters)}, {Digits.Of(patient.Weight.Kilograms)}"), "cm, kg"),
            ("body surface (Du Bois)", Digits.Fixed(patient.BodySurface.SquareMeters, 2), "m²"),
            ($"body water ({PageWords.Name(patient.BodyWaterFormula)})", Digits.Fixed(patient.BodyWater.Liters, 1), "L"),
            ("urine", Digits.Fixed(patient.ResidualFunction.UrineVolumePerDay.Milliliters, 0), "mL/day"),
            ("renal urea, creatinine clearance", Invariant($"{Digits.Of(patient.ResidualFunction.UreaClearance.MillilitersPerMinute)}, {Digits.Of(patient.ResidualFunction.CreatinineClearance.MillilitersPerMinute)}"), "mL/min"));
    }

    private static ReportBlock Table(params (string Name, string Value, string Unit)[] rows) => new ReportBlock().Table(
        new(["", "#", "unit"], [.. rows.Select(row => (IReadOnlyList<string>)[row.Name, row.Value, row.Unit])]));
}
