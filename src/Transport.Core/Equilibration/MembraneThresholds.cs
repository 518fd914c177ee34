namespace Transport;

/// <summary>Every limit that the reading of an equilibration test compares with, in one table; change one with <c>with</c>.</summary>
/// <remarks>Mirrored in reference-data/morelle-2021-thresholds, which a test compares with <see cref="Default"/>.</remarks>
public sealed record MembraneThresholds
{
    private const string Guideline = "Morelle et al., Perit Dial Int 2021;41:352-372";

    /// <summary>The table as it ships.</summary>
    public static MembraneThresholds Default { get; } = new();

    /// <summary>What pages call this table: the shipped one, or a local protocol with its version.</summary>
    public string Name { get; init; } = "shipped limits";

    /// <summary>Net ultrafiltration in 4 h at 3.86 % below which the capacity is called low, mL.</summary>
    /// <remarks>The figure itself was read as the older committee rule; that the 2021 guideline keeps it is memory.</remarks>
    public Threshold LowUltrafiltrationStrong { get; init; } = new(400, "mL", Evidence.Memory, Guideline);

    /// <summary>Net ultrafiltration in 4 h at 2.27 % below which the capacity is called low, mL.</summary>
    public Threshold LowUltrafiltrationMiddle { get; init; } = new(100, "mL", Evidence.Memory, Guideline);

    /// <summary>Net ultrafiltration in 4 h at 2.27 % below which the result is called near the limit, mL.</summary>
    public Threshold NearUltrafiltrationMiddle { get; init; } = new(200, "mL", Evidence.Read, "Perit Dial Int 2001, PubMed 11330573");

    /// <summary>What a labelled fill may hide, mL: above a limit by less than this, net ultrafiltration is called near it.</summary>
    public Threshold UnknownOverfill { get; init; } = new(100, "mL", Evidence.Read, "Perit Dial Int 2019, doi 10.3747/pdi.2017.00004");

    /// <summary>Sodium dip in the first hour at 3.86 % up to which it is called small, mmol/L.</summary>
    public Threshold SmallSodiumDip { get; init; } = new(5, "mmol/L", Evidence.Memory, Guideline);

    /// <summary>Fall of D/P sodium in the first hour at 3.86 % up to which it is called small.</summary>
    public Threshold SmallSodiumRatioDip { get; init; } = new(0.03, "", Evidence.Memory, Guideline);

    /// <summary>Plasma glucose above which ultrafiltration, D/D0 and the sodium dip are not comparable, mmol/L.</summary>
    public Threshold HighPlasmaGlucose { get; init; } = new(15, "mmol/L", Evidence.Memory, "usual practice, 15 to 20 mmol/L");

    /// <summary>Plasma glucose below which somebody has to act, mmol/L. A record book's nights (ReviewLimits) begin from it.</summary>
    public Threshold LowPlasmaGlucose { get; init; } = new(4, "mmol/L", Evidence.Memory, "practice");

    /// <summary>Plasma glucose above which somebody has to act, mmol/L. A record book's nights (ReviewLimits) begin from it.</summary>
    public Threshold VeryHighPlasmaGlucose { get; init; } = new(20, "mmol/L", Evidence.Read, "Therapeutic Guidelines (Australia), diabetes: severe hyperglycaemia in adults, for example above 20 mmol/L (excerpt)");

    /// <summary>Plasma sodium below which somebody has to act, mmol/L.</summary>
    public Threshold LowPlasmaSodium { get; init; } = new(125, "mmol/L", Evidence.Read, "Spasovski et al., Nephrol Dial Transplant 2014;29 Suppl 2:i1-i39: profound hyponatraemia");

    /// <summary>Plasma sodium above which somebody has to act, mmol/L.</summary>
    public Threshold HighPlasmaSodium { get; init; } = new(155, "mmol/L", Evidence.Memory, "practice: severe hypernatraemia");

    /// <summary>D/P of creatinine or urea above which a sample or plasma mix-up is to be thought of.</summary>
    public Threshold DialysateToPlasmaHigh { get; init; } = new(1.00, "", Evidence.Choice, "published maxima 1.03 and 1.14");

    /// <summary>D/P of creatinine or urea above which no class is given.</summary>
    public Threshold DialysateToPlasmaImpossible { get; init; } = new(1.10, "", Evidence.Choice, "published maxima 1.03 and 1.14");

    /// <summary>Smallest fill of an adult with which the classes are comparable, mL.</summary>
    public Threshold AdultFillLow { get; init; } = new(1900, "mL", Evidence.Choice, "2 L within 5 %");

    /// <summary>Largest fill of an adult with which the classes are comparable, mL.</summary>
    public Threshold AdultFillHigh { get; init; } = new(2100, "mL", Evidence.Choice, "2 L within 5 %");

    /// <summary>Smallest fill of a child with which the classes are comparable, mL/m² of body surface.</summary>
    public Threshold ChildFillLow { get; init; } = new(990, "mL/m²", Evidence.Choice, "1100 mL/m² within 10 %");

    /// <summary>Largest fill of a child with which the classes are comparable, mL/m² of body surface.</summary>
    public Threshold ChildFillHigh { get; init; } = new(1210, "mL/m²", Evidence.Choice, "1100 mL/m² within 10 %");

    /// <summary>Age below which a patient is a child here, years.</summary>
    public Threshold AdultAge { get; init; } = new(18, "years", Evidence.Choice, "usual age of majority");

    /// <summary>How far from 240 min the 4-h sample and the dwell may be, min.</summary>
    public Threshold FourHourTolerance { get; init; } = new(10, "min", Evidence.Choice, "no published tolerance found");

    /// <summary>How far from 240 min a sample may be to be classed at all, with the mark "class not comparable", min.</summary>
    public Threshold ClassTolerance { get; init; } = new(60, "min", Evidence.Choice, "no published tolerance found");

    /// <summary>How far from 0 and 60 min the early samples may be, min.</summary>
    public Threshold EarlyTolerance { get; init; } = new(5, "min", Evidence.Choice, "no published tolerance found");

    /// <summary>Weakest glucose solution read as 2.27 %, mmol/L.</summary>
    public Threshold MiddleStrengthLow { get; init; } = new(116, "mmol/L", Evidence.Choice, "126.0 mmol/L within 8 %");

    /// <summary>Strongest glucose solution read as 2.27 %, mmol/L.</summary>
    public Threshold MiddleStrengthHigh { get; init; } = new(136, "mmol/L", Evidence.Choice, "126.0 mmol/L within 8 %");

    /// <summary>Weakest glucose solution read as 3.86 %, mmol/L.</summary>
    public Threshold StrongStrengthLow { get; init; } = new(200, "mmol/L", Evidence.Choice, "214.3 mmol/L less 7 %");

    /// <summary>Strongest glucose solution read as 3.86 %, mmol/L.</summary>
    public Threshold StrongStrengthHigh { get; init; } = new(240, "mmol/L", Evidence.Choice, "235.9 mmol/L (4.25 % anhydrous) plus 2 %");

    /// <summary>Share of free water in the ultrafiltration of the first hour at 3.86 % below which it is called small.</summary>
    public Threshold SmallFreeWaterShare { get; init; } = new(0.26, "", Evidence.Read, "Blood Purif 2015;39:70");

    /// <summary>Mass transfer area coefficient of creatinine at 3.86 % above which a large vascular surface is to be thought of, mL/min.</summary>
    public Threshold LargeSurfaceMassTransfer { get; init; } = new(12.5, "mL/min", Evidence.Read, "Smit et al. 2004, long-term patients");

    /// <summary>Absorbed share of glucose in 4 h at 3.86 % above which a large vascular surface is to be thought of.</summary>
    public Threshold LargeGlucoseAbsorption { get; init; } = new(0.72, "", Evidence.Read, "Smit et al. 2004, long-term patients");

    /// <summary>Marker loss above which fluid absorption is called high, mL/min.</summary>
    public Threshold HighMarkerLoss { get; init; } = new(2.14, "mL/min", Evidence.Memory, "Amsterdam permeability analyses");

    /// <summary>Clearance of total protein above which loss is called high, mL/day.</summary>
    public Threshold HighProteinClearance { get; init; } = new(180, "mL/day", Evidence.Choice, "twice a median of 89.4 mL/day");

    /// <summary>Days after the start of dialysis within which a test is preliminary.</summary>
    public Threshold EarlyAfterStart { get; init; } = new(28, "days", Evidence.Read, "KDOQI 2006, first test after 4 to 8 weeks");

    /// <summary>Days after a peritonitis within which a test is preliminary.</summary>
    public Threshold RecentPeritonitis { get; init; } = new(28, "days", Evidence.Read, "KDOQI 2006, one month after resolution");

    /// <summary>Dwell before a test that is too short to start from, min.</summary>
    public Threshold ShortPrecedingDwell { get; init; } = new(180, "min", Evidence.Read, "ISPD nursing answer 2023");

    /// <summary>Instillation that is too slow for a time zero, min.</summary>
    public Threshold SlowInstillation { get; init; } = new(15, "min", Evidence.Choice, "instillation takes 10 min");

    /// <summary>Residual volume above which D/D0 and ultrafiltration are not comparable, mL.</summary>
    public Threshold LargeResidualVolume { get; init; } = new(500, "mL", Evidence.Choice, "usual residual volumes are 200 to 250 mL (memory)");

    /// <summary>The same as a share of the fill.</summary>
    public Threshold LargeResidualShare { get; init; } = new(0.25, "", Evidence.Choice, "usual residual volumes are 200 to 250 mL (memory)");

    /// <summary>Rise of D/P creatinine between two tests that is named even within the noise.</summary>
    public Threshold RiseOfTransfer { get; init; } = new(0.10, "", Evidence.Choice, "usual practice");

    /// <summary>Fall of the sodium dip between two tests that is named even within the noise, mmol/L.</summary>
    public Threshold FallOfSodiumDip { get; init; } = new(3, "mmol/L", Evidence.Choice, "usual practice");

    /// <summary>Years on dialysis from which a falling trend gets a sentence of its own.</summary>
    public Threshold LongOnDialysis { get; init; } = new(5, "years", Evidence.Choice, "usual practice");

    /// <summary>Whether the classes of D/D0 and the limits for 2.27 % apply to a solution.</summary>
    public bool IsMiddleStrength(DialysisSolution solution) => IsStrength(solution, MiddleStrengthLow, MiddleStrengthHigh);

    /// <summary>Whether the limits for 3.86 % apply to a solution.</summary>
    public bool IsStrongStrength(DialysisSolution solution) => IsStrength(solution, StrongStrengthLow, StrongStrengthHigh);

    private static bool IsStrength(DialysisSolution solution, Threshold low, Threshold high)
    {
        ArgumentNullException.ThrowIfNull(solution);
        return solution.Agent == OsmoticAgent.Glucose
            && solution.Glucose.MillimolesPerLiter >= low.Value
            && solution.Glucose.MillimolesPerLiter <= high.Value;
    }
}
