using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>One night of a record book, with the day before it: what was written, as far as it could be read.</summary>
/// <remarks>The format and its words: docs/record-book.md. What is null was not written, or could not be read, which is then a finding.</remarks>
public sealed record NightRecord
{
    /// <summary>The evening on which the night begins. Of a row in doubt its place, which is 0001-01-01 where the book has no date that fits.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>Row in the file, counted from 1.</summary>
    public required int Row { get; init; }

    /// <summary>The name of the regimen, empty where there is none.</summary>
    public string RegimenName { get; init; } = "";

    /// <summary>What was to be run; null where the book does not say it all. Of exchanges by hand, what was run by their times and fills.</summary>
    public Regimen? Regimen { get; init; }

    /// <summary>Whether the day was treated by exchanges by hand, whose ultrafiltration is that of 24 h.</summary>
    public bool IsByHand { get; init; }

    /// <summary>The fluid of the night.</summary>
    public BookFluid? NightFluid { get; init; }

    /// <summary>The fluid of the day that follows.</summary>
    public BookFluid? DayFluid { get; init; }

    /// <summary>What was drained before the first fill.</summary>
    public Volume? InitialDrain { get; init; }

    /// <summary>Total ultrafiltration as written.</summary>
    public Volume? WrittenUltrafiltration { get; init; }

    /// <summary>What <see cref="WrittenUltrafiltration"/> counts, as the book says; null where it never says.</summary>
    public UltrafiltrationCount? Counts { get; init; }

    /// <summary>What each cycle drained; empty where the book has no cycles.</summary>
    public ImmutableArray<Volume> CycleDrains { get; init; } = [];

    /// <summary>Mean dwell time of the cycles.</summary>
    public TimeSpan? AverageDwell { get; init; }

    /// <summary>Dwell time lost against the plan; negative where some was added.</summary>
    public TimeSpan? LostDwell { get; init; }

    /// <summary>Mean time of one drain.</summary>
    public TimeSpan? DrainTime { get; init; }

    /// <summary>Ultrafiltration of exchanges by hand during the day before, where no rows of their own say more.</summary>
    public Volume? HandUltrafiltration { get; init; }

    /// <summary>Exchanges by hand, each with a row of its own.</summary>
    public ImmutableArray<BookExchange> Exchanges { get; init; } = [];

    /// <summary>Body weight as the scales showed it.</summary>
    public Mass? Weight { get; init; }

    /// <summary>Whether it was taken full; null where the book never says.</summary>
    public WeighingHabit? Weighed { get; init; }

    /// <summary>The target for the empty weight, written here or above.</summary>
    public Mass? TargetWeight { get; init; }

    /// <summary>The day on which the target was set; null where the book does not say.</summary>
    public DateOnly? TargetWeightOn { get; init; }

    /// <summary>Blood pressure sitting.</summary>
    public BloodPressure? Sitting { get; init; }

    /// <summary>Blood pressure standing.</summary>
    public BloodPressure? Standing { get; init; }

    /// <summary>Pulse, per minute.</summary>
    public double? PulsePerMinute { get; init; }

    /// <summary>Body temperature, °C: the highest that is written, in its column or in words.</summary>
    public double? TemperatureCelsius { get; init; }

    /// <summary>Blood glucose.</summary>
    public Concentration? BloodGlucose { get; init; }

    /// <summary>Urine in the 24 h before.</summary>
    public Volume? Urine { get; init; }

    /// <summary>How the drained fluid looked.</summary>
    public EffluentLook? Effluent { get; init; }

    /// <summary>Complaints that were understood, of <see cref="Complaint"/> and of <see cref="Remark"/>.</summary>
    public ImmutableArray<Symptom> Symptoms { get; init; } = [];

    /// <summary>The complaints, as written.</summary>
    public string Complaint { get; init; } = "";

    /// <summary>Whether the book says that a peritonitis was found or treated this day.</summary>
    public bool HasPeritonitis { get; init; }

    /// <summary>Whether the book says that no treatment was done this night.</summary>
    public bool IsSkipped { get; init; }

    /// <summary>The remark, as written.</summary>
    public string Remark { get; init; } = "";

    /// <summary>
    /// Why it is in doubt which night this is, or which of its cells are its own, as "row 83, whose date “20-06-25x” cannot be read"; empty where it is in none.
    /// <see cref="Date"/> is then that of the row's place in the book.
    /// </summary>
    public string Doubt { get; init; } = "";

    // Complaints that its words give to somebody else. Whoever keeps the book for another may mean the patient.
    internal ImmutableArray<Symptom> OfAnother { get; init; } = [];

    // What its rows say of the body, cell by cell, as written.
    internal ImmutableArray<BookCell> Cells { get; init; } = [];

    // Whether its cells could not be told apart: all of them stand in the remark.
    internal bool IsLost { get; init; }

    // Whether it carries another patient's code.
    internal bool IsOfAnother { get; init; }

    // The date's other rows, with what they say of the body: a second pressure of a day is not the first.
    internal ImmutableArray<NightRecord> OtherRows { get; init; } = [];

    internal IEnumerable<NightRecord> Rows => OtherRows.Prepend(this);

    // The day on which it was written, as far as that is known.
    internal DateOnly? Day => Date == default ? null : Date;

    // All free words of the day, in whatever column; of a night that was not read from a file there are the two.
    internal string Words => string.Join("; ", Cells.IsEmpty ? new[] { Complaint, Remark }.Where(text => text.Length > 0) : Cells.Where(cell => cell.IsWords).Select(cell => cell.Words));

    /// <summary>Whether the strongest glucose was used, in the night, the day or an exchange by hand.</summary>
    public bool UsesStrongest => !IsSkipped
        && (NightFluid?.HoldsStrongest == true || DayFluid?.HoldsStrongest == true || Exchanges.Any(exchange => exchange.Fluid?.HoldsStrongest == true));

    /// <summary>Ultrafiltration by the bags: of the cycles if all are there, of exchanges by hand; null where neither is.</summary>
    public Volume? UltrafiltrationByBags
    {
        get
        {
            if (Regimen is { } regimen && CycleDrains.Length == regimen.Cycles)
            {
                return CycleDrains.Aggregate(default(Volume), (sum, drain) => sum + drain)
                    - regimen.Night.Aggregate(default(Volume), (sum, exchange) => sum + exchange.Fill);
            }

            // Some cycles are no whole, and exchanges by hand are not the night.
            return CycleDrains.Length == 0 && Exchanges.Length > 0 && Exchanges.All(exchange => exchange.Ultrafiltration is not null)
                ? Exchanges.Aggregate(default(Volume), (sum, exchange) => sum + exchange.Ultrafiltration!.Value)
                : null;
        }
    }
}
