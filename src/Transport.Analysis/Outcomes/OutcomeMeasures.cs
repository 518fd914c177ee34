using static Transport.Doubt;

namespace Transport.Analysis;

/// <summary>Every figure that a regimen returns, with its formula, unit and source.</summary>
/// <remarks>
/// Protein catabolism is not among them: of a simulated day it would give back the generation that was put in. It comes from a measured collection
/// (<see cref="CollectedDay"/>). Plasma potassium and phosphate are not among them either: they are never predicted.
/// </remarks>
public static class OutcomeMeasures
{
    // Glucose polymer, kcal/g (memory).
    private const double PolymerEnergy = 4;

    // Coefficient of variation of one 24-h collection, total (Virga et al., Nephrol Dial Transplant 2002, read).
    internal const double UreaDoseOfOneDay = 0.044;
    internal const double CreatinineClearanceOfOneDay = 0.060;

    private const string Bags = "sums over the bags of 24 h";

    /// <summary>24-h ultrafiltration.</summary>
    public static OutcomeMeasure Ultrafiltration { get; } = new(
        "ultrafiltration, 24 h", "mL", 0, "Σ drained − Σ filled, night and day", Bags, Parameters | ModelForm | NightToNight, day => day.Ultrafiltration)
    {
        DayToDay = (mean, night) => night.Milliliters(mean),
    };

    /// <summary>That of the night.</summary>
    public static OutcomeMeasure NightUltrafiltration { get; } = new(
        "ultrafiltration, night", "mL", 0, "Σ drained − Σ filled over the cycles", Bags, Parameters | ModelForm | NightToNight, day => day.NightUltrafiltration);

    /// <summary>That of the day.</summary>
    public static OutcomeMeasure DayUltrafiltration { get; } = new(
        "ultrafiltration, day", "mL", 0, "initial drain + drains by day − fills by day", Bags, Parameters | ModelForm, day => day.DayUltrafiltration);

    /// <summary>Per cycle, on average.</summary>
    public static OutcomeMeasure CycleUltrafiltration { get; } = new(
        "ultrafiltration per cycle", "mL", 0, "ultrafiltration of the night / cycles", Bags, Parameters | ModelForm | NightToNight,
        day => day.Rhythm.Cycles > 0 ? day.NightUltrafiltration / day.Rhythm.Cycles : null)
    {
        Reason = "there is no night of exchanges",
    };

    /// <summary>With urine.</summary>
    public static OutcomeMeasure FluidRemoval { get; } = new(
        "fluid removal, 24 h", "mL", 0, "ultrafiltration + urine", Bags, Parameters | ModelForm | NightToNight,
        day => day.Patient.ResidualFunction is { IsUrineStated: true, UrineVolumePerDay: var urine } ? day.Ultrafiltration + urine.Milliliters : null)
    {
        Reason = "urine was not stated",
    };

    /// <summary>Weekly Kt/V of urea, both.</summary>
    public static OutcomeMeasure KtOverV { get; } = new(
        "Kt/V urea, total", "per week", 2, "7 (K_p + K_r) / V, V body water", "KDOQI 2006 (read); V by the formula that is named", Parameters,
        day => Weekly(day, Peritoneal(day, Solutes.Urea) + day.Patient.ResidualFunction.UreaClearance))
    {
        DayToDay = (mean, _) => UreaDoseOfOneDay * mean,
        Kidneys = kidneys => kidneys.IsUreaClearanceKnown,
    };

    /// <summary>By the peritoneum.</summary>
    public static OutcomeMeasure PeritonealKtOverV { get; } = new(
        "Kt/V urea, peritoneal", "per week", 2, "7 K_p / V, K_p = Σ V_drain D / P", "KDOQI 2006 (read)", Parameters, day => Weekly(day, Peritoneal(day, Solutes.Urea)));

    /// <summary>By the kidneys.</summary>
    public static OutcomeMeasure RenalKtOverV { get; } = new(
        "Kt/V urea, renal", "per week", 2, "7 K_r / V", "KDOQI 2006 (read)", None, day => Weekly(day, day.Patient.ResidualFunction.UreaClearance))
    {
        Kidneys = kidneys => kidneys.IsUreaClearanceKnown,
    };

    /// <summary>Weekly creatinine clearance per 1.73 m², both.</summary>
    public static OutcomeMeasure CreatinineClearance { get; } = new(
        "creatinine clearance, total", "L/week/1.73 m²", 1, "7 (K_p + (K_r urea + K_r creatinine)/2) · 1.73 / surface", "conventional; surface by Du Bois", Parameters,
        day => PerSurface(day, Peritoneal(day, Solutes.Creatinine) + day.Patient.ResidualFunction.FiltrationRate))
    {
        DayToDay = (mean, _) => CreatinineClearanceOfOneDay * mean,
        Kidneys = kidneys => kidneys.IsClearanceKnown,
    };

    /// <summary>By the peritoneum.</summary>
    public static OutcomeMeasure PeritonealCreatinineClearance { get; } = new(
        "creatinine clearance, peritoneal", "L/week/1.73 m²", 1, "7 K_p · 1.73 / surface", "conventional", Parameters, day => PerSurface(day, Peritoneal(day, Solutes.Creatinine)));

    /// <summary>By the kidneys.</summary>
    public static OutcomeMeasure RenalCreatinineClearance { get; } = new(
        "creatinine clearance, renal", "L/week/1.73 m²", 1, "7 (K_r urea + K_r creatinine)/2 · 1.73 / surface", "conventional", None, day => PerSurface(day, day.Patient.ResidualFunction.FiltrationRate))
    {
        Kidneys = kidneys => kidneys.IsClearanceKnown,
    };

    /// <summary>Peritoneal clearance of β2-microglobulin.</summary>
    public static OutcomeMeasure Beta2Clearance { get; } = new(
        "β2-microglobulin clearance, about half of what is published", "L/week", 1, "7 Σ V_drain D / P", "the model gives half of what was published at 2 h (computed)", Parameters,
        day => day.Rhythm.ClearanceOf(Solutes.Beta2Microglobulin)?.LitersPerWeek);

    /// <summary>Peritoneal phosphate removal at the stated plasma level.</summary>
    public static OutcomeMeasure PhosphateRemoved { get; } = new(
        "phosphate removed", "mmol/day", 1, "Σ V_drain D − Σ V_fill F at the plasma level that was stated", "its plasma level is never predicted", Parameters,
        day => day.Rhythm.RemovedMillimoles(Solutes.Phosphate));

    /// <summary>Peritoneal phosphate clearance.</summary>
    public static OutcomeMeasure PhosphateClearance { get; } = new(
        "phosphate clearance", "L/week", 1, "7 Σ V_drain D / P", "permeability 0.85 of creatinine's (choice from two series, read)", Parameters,
        day => day.Rhythm.ClearanceOf(Solutes.Phosphate)?.LitersPerWeek);

    /// <summary>Peritoneal potassium removal at the stated plasma level.</summary>
    public static OutcomeMeasure PotassiumRemoved { get; } = new(
        "potassium removed", "mmol/day", 1, "Σ V_drain D − Σ V_fill F at the plasma level that was stated", "its plasma level is never predicted", Parameters,
        day => day.Rhythm.RemovedMillimoles(Solutes.Potassium));

    /// <summary>Sodium removal, centred on published series.</summary>
    public static OutcomeMeasure SodiumRemoved { get; } = new(
        "sodium removed", "mmol/day", 0, "(Σ V_drain D − Σ V_fill F) · factor of the calibration", "the model removes more than series do (read): factor 0.55, 0.3 to 1.0 (choice)", Parameters | ModelForm,
        day => day.Sodium)
    {
        Always = ModelForm,
    };

    /// <summary>As the model has it.</summary>
    public static OutcomeMeasure SodiumRemovedByModel { get; } = new(
        "sodium removed, by the model", "mmol/day", 0, "Σ V_drain D − Σ V_fill F", "known to be too much", Parameters, day => day.SodiumByModel);

    /// <summary>Sodium per litre of ultrafiltration.</summary>
    public static OutcomeMeasure SodiumPerLiter { get; } = new(
        "sodium per litre of ultrafiltration", "mmol/L", 0, "sodium removed / ultrafiltration, where this is above 100 mL (choice)", "series: 68 to 122 (computed from figures that were read)", Parameters | ModelForm | NightToNight,
        day => day.Ultrafiltration > 100 ? 1000 * day.Sodium / day.Ultrafiltration : null)
    {
        Always = ModelForm,
        Reason = "ultrafiltration may be 100 mL or less, and a quotient then says nothing",
    };

    /// <summary>Glucose absorbed.</summary>
    public static OutcomeMeasure GlucoseAbsorbed { get; } = new(
        "glucose absorbed", "g/day", 0, "0.18016 (Σ V_fill F − Σ V_drain D), anhydrous", "molar mass", Parameters, day => day.Rhythm.GlucoseAbsorbedGrams);

    /// <summary>Energy of what is absorbed.</summary>
    public static OutcomeMeasure EnergyAbsorbed { get; } = new(
        "energy absorbed", "kcal/day", 0, "3.75 kcal/g glucose + 4 kcal/g polymer", "memory", Parameters, Energy);

    /// <summary>Its share of the day's need.</summary>
    public static OutcomeMeasure EnergyShare { get; } = new(
        "share of the energy need", "%", 0, "energy absorbed / (30 kcal/kg · weight) of an adult, or another need", "25 to 35 kcal/kg (memory)", Parameters,
        day => 100 * Energy(day) / (day.Options.EnergyNeedOf(day.Patient) * day.Patient.Weight.Kilograms))
    {
        Reason = "the usual need is an adult's, and no value for children is known here",
    };

    /// <summary>Albumin lost.</summary>
    public static OutcomeMeasure AlbuminLoss { get; } = new(
        "albumin lost", "g/day", 1, "clearance of albumin · plasma albumin", "large pores of the model", Parameters,
        day => day.Options.PlasmaAlbuminGramsPerLiter * day.Rhythm.ClearanceOf(Solutes.Albumin)?.LitersPerDay);

    /// <summary>Protein lost.</summary>
    public static OutcomeMeasure ProteinLoss { get; } = new(
        "protein lost", "g/day", 1, "clearance of albumin · albumin + clearance of IgG · (total protein − albumin)", "the rest taken to pass as IgG does (choice); measured 4 to 10.5 (read)", Parameters,
        day => AlbuminLoss.Read(day) + (day.Options.PlasmaProteinGramsPerLiter - day.Options.PlasmaAlbuminGramsPerLiter) * day.Rhythm.ClearanceOf(Solutes.ImmunoglobulinG)?.LitersPerDay);

    /// <summary>Free amino acids lost.</summary>
    public static OutcomeMeasure AminoAcidLoss { get; } = new(
        "free amino acids lost", "g/day", 1, "clearance of creatinine, which is as large, · plasma level", "choice: 113 g/mol against about 125", Parameters,
        day => day.Options.PlasmaAminoAcidsGramsPerLiter * Peritoneal(day, Solutes.Creatinine).LitersPerDay);

    /// <summary>The fullest moment.</summary>
    public static OutcomeMeasure LargestVolume { get; } = new(
        "most in the belly", "mL", 0, "the largest volume of the simulation", "located within a step", Parameters, day => day.Rhythm.LargestVolume);

    /// <summary>The pressure then, lying.</summary>
    public static OutcomeMeasure LargestPressure { get; } = new(
        "pressure at the fullest, lying", "cmH2O", 1, "P₀ + 2.0 (V − V₀), V in L", "13.5 at 2 L where not measured, 2.0 per L (read); 16 a caution, 18 the limit", Parameters,
        day => day.Options.IsPressureMeasured || !TargetAssessment.IsChild(day.Patient)
            ? day.Options.PressureInUse.At(Volume.FromMilliliters(day.Rhythm.LargestVolume)).CentimetersOfWater + day.PressureShift
            : null)
    {
        Reason = "not measured, and what is known without is of adults",
    };

    /// <summary>Time spent with treatment.</summary>
    public static OutcomeMeasure TimeConnected { get; } = new(
        "time connected", "h/day", 1, "night of several cycles; otherwise, and by day, fills and drains", Bags, None, day => day.Rhythm.Mean(Connected));

    /// <summary>Fluid used.</summary>
    public static OutcomeMeasure FluidUsed { get; } = new(
        "fluid used", "L/day", 1, "Σ V_fill", Bags, None, day => day.Rhythm.Mean(one => one.FluidUsed.Liters));

    /// <summary>How many bags.</summary>
    public static OutcomeMeasure BagCount { get; } = new(
        "bags used", "per day", 0, "bags that hold each solution with least left over", "volumes of bags are an option", None,
        day => day.Rhythm.Mean(one => BagCover.Of(one.Regimen, day.Options.BagVolumes).Sum(cover => cover.Bags.Length)));

    /// <summary>Exchanges with a strongest glucose.</summary>
    public static OutcomeMeasure StrongestExchanges { get; } = new(
        "exchanges with the strongest glucose", "per day", 0, "those above 180 mmol/L", "choice", None,
        day => day.Rhythm.Mean(one => one.Regimen.Exchanges.Count(exchange => RegimenFindings.IsStrongest(exchange.Solution))));

    /// <summary>All of them, in the order of tables.</summary>
    public static IReadOnlyList<OutcomeMeasure> All { get; } =
    [
        Ultrafiltration, NightUltrafiltration, DayUltrafiltration, CycleUltrafiltration, FluidRemoval, SodiumRemoved, SodiumRemovedByModel, SodiumPerLiter,
        KtOverV, PeritonealKtOverV, RenalKtOverV, CreatinineClearance, PeritonealCreatinineClearance, RenalCreatinineClearance, Beta2Clearance,
        PhosphateClearance, PhosphateRemoved, PotassiumRemoved, GlucoseAbsorbed, EnergyAbsorbed, EnergyShare, AlbuminLoss, ProteinLoss, AminoAcidLoss,
        LargestVolume, LargestPressure, TimeConnected, FluidUsed, BagCount, StrongestExchanges,
    ];

    private static double Weekly(MeasuredDay day, Clearance clearance) => clearance.LitersPerWeek / day.BodyWaterLiters;

    private static double PerSurface(MeasuredDay day, Clearance clearance) => clearance.LitersPerWeek / day.Patient.SurfaceFactor;

    private static Clearance Peritoneal(MeasuredDay day, Solute solute) => day.Rhythm.ClearanceOf(solute)!.Value;

    private static double? Energy(MeasuredDay day) =>
        RegimenOutcome.KilocaloriesPerGram * day.Rhythm.GlucoseAbsorbedGrams + PolymerEnergy * day.Rhythm.PolymerAbsorbedGrams;

    // A night of one exchange is by hand, and nobody is connected while it stays in.
    private static double Connected(RegimenOutcome outcome)
    {
        var regimen = outcome.Regimen;
        double Minutes(Exchange exchange, CycleOutcome ran) => exchange.Fill.Milliliters / regimen.Settings.FillFlow.MillilitersPerMinute + ran.DrainTime.TotalMinutes;
        var byDay = regimen.Day.Zip(outcome.DayExchanges, Minutes).Sum();
        var night = regimen.Night.Length > 1 ? regimen.NightLength.TotalMinutes : regimen.Night.Zip(outcome.Cycles, Minutes).Sum();
        return (byDay + night) / 60;
    }
}
