using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>The columns of a study's files: names with units, in order.</summary>
internal static class StrategyColumns
{
    public static ImmutableArray<Column> All { get; } =
    [
        Column.OfWhole("patient", row => row.Patient),
        Column.OfWhole("seed", row => row.Seed),
        Column.OfText("category", row => row.Category.ToString()),
        Column.OfNumber("diffusion_area_cm_per_1.73_m2", row => row.DiffusionAreaCentimeters),
        Column.OfNumber("fitted_diffusion_area_cm_per_1.73_m2", row => row.FittedDiffusionAreaCentimeters),
        Column.OfNumber("osmotic_conductance_uL_per_min_per_mmHg_per_1.73_m2", row => row.OsmoticConductanceMicroliters),
        Column.OfNumber("fitted_osmotic_conductance_uL_per_min_per_mmHg_per_1.73_m2", row => row.FittedOsmoticConductanceMicroliters),
        Column.OfText("strategy", row => row.Strategy),
        Column.OfText("regimen", row => row.Regimen),
        Column.OfNumber("ultrafiltration_mL_per_day", row => row.UltrafiltrationMilliliters),
        Column.OfNumber("urea_Kt_over_V_per_week", row => row.UreaDose),
        Column.OfNumber("creatinine_clearance_L_per_week_per_1.73_m2", row => row.CreatinineClearanceLiters),
        Column.OfNumber("sodium_removed_mmol_per_day", row => row.SodiumRemovedMillimoles),
        Column.OfNumber("glucose_absorbed_g_per_day", row => row.GlucoseAbsorbedGrams),
        Column.OfNumber("fluid_L_per_day", row => row.FluidUsedLiters),
        Column.OfWhole("cycles", row => row.Cycles),
        Column.OfNumber("loss_g", row => row.LossGrams),
        Column.OfNumber("best_loss_g", row => row.BestLossGrams),
        Column.OfNumber("regret_g", row => row.RegretGrams),
    ];

    public static int PlaceOf(string name) => All.Select((column, i) => (column.Name, i)).First(pair => pair.Name == name).i;

    public static StrategyRow Row(Func<string, object> value) => new()
    {
        Patient = (int)value("patient"),
        Seed = (int)value("seed"),
        Category = Enum.Parse<TransportCategory>((string)value("category")),
        DiffusionAreaCentimeters = (double)value("diffusion_area_cm_per_1.73_m2"),
        FittedDiffusionAreaCentimeters = (double)value("fitted_diffusion_area_cm_per_1.73_m2"),
        OsmoticConductanceMicroliters = (double)value("osmotic_conductance_uL_per_min_per_mmHg_per_1.73_m2"),
        FittedOsmoticConductanceMicroliters = (double)value("fitted_osmotic_conductance_uL_per_min_per_mmHg_per_1.73_m2"),
        Strategy = (string)value("strategy"),
        Regimen = (string)value("regimen"),
        UltrafiltrationMilliliters = (double)value("ultrafiltration_mL_per_day"),
        UreaDose = (double)value("urea_Kt_over_V_per_week"),
        CreatinineClearanceLiters = (double)value("creatinine_clearance_L_per_week_per_1.73_m2"),
        SodiumRemovedMillimoles = (double)value("sodium_removed_mmol_per_day"),
        GlucoseAbsorbedGrams = (double)value("glucose_absorbed_g_per_day"),
        FluidUsedLiters = (double)value("fluid_L_per_day"),
        Cycles = (int)value("cycles"),
        LossGrams = (double)value("loss_g"),
        BestLossGrams = (double)value("best_loss_g"),
    };

    internal sealed record Column(string Name, bool IsText, bool IsWhole, Func<StrategyRow, string> Text, Func<StrategyRow, double> Number)
    {
        public static Column OfText(string name, Func<StrategyRow, string> text) => new(name, true, false, text, _ => 0);

        public static Column OfWhole(string name, Func<StrategyRow, int> number) => new(name, false, true, _ => "", row => number(row));

        public static Column OfNumber(string name, Func<StrategyRow, double> number) => new(name, false, false, _ => "", number);
    }
}
