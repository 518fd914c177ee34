namespace Transport.Analysis;

/// <summary>What a table calls an observed quantity.</summary>
public static class ObservedQuantityWords
{
    /// <summary>Its name.</summary>
    public static string Name(this ObservedQuantity quantity) => quantity switch
    {
        ObservedQuantity.CreatinineToPlasma => "D/P creatinine",
        ObservedQuantity.UreaToPlasma => "D/P urea",
        ObservedQuantity.SodiumToPlasma => "D/P sodium",
        ObservedQuantity.GlucoseToInitial => "D/D0 glucose",
        ObservedQuantity.GlucoseToFresh => "glucose over fresh solution",
        ObservedQuantity.AlbuminToPlasma => "D/P albumin",
        ObservedQuantity.ImmunoglobulinGToPlasma => "D/P immunoglobulin G",
        ObservedQuantity.MeanNightUltrafiltrationMilliliters => "mean ultrafiltration of the nights, mL",
        ObservedQuantity.MeanInitialDrainMilliliters => "mean initial drain, mL",
        ObservedQuantity.MeanNightAndDayUltrafiltrationMilliliters => "mean ultrafiltration of nights and days, mL",
        _ => "net ultrafiltration, mL",
    };

    /// <summary>Whether it is a mean of nights, and not of one dwell.</summary>
    public static bool IsOfNights(this ObservedQuantity quantity) => quantity is ObservedQuantity.MeanNightUltrafiltrationMilliliters
        or ObservedQuantity.MeanInitialDrainMilliliters or ObservedQuantity.MeanNightAndDayUltrafiltrationMilliliters;

    /// <summary>Whether it is of a protein, which large pores alone let pass.</summary>
    public static bool IsOfProtein(this ObservedQuantity quantity) =>
        quantity is ObservedQuantity.AlbuminToPlasma or ObservedQuantity.ImmunoglobulinGToPlasma;
}
