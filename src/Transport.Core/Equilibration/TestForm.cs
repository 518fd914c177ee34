namespace Transport;

/// <summary>The forms of test that a sheet can describe.</summary>
public enum TestForm
{
    /// <summary>The classic test of 4 h.</summary>
    FourHour,

    /// <summary>The test of 4 h with dialysate sodium at 60 min, meant for 3.86 %.</summary>
    FourHourWithSodium,

    /// <summary>The fast form: one dialysate sample, from the bag drained after 4 h.</summary>
    Fast,

    /// <summary>One hour, drained and weighed, with sodium.</summary>
    OneHour,

    /// <summary>One of two tests of one hour with two strengths; see <see cref="PairedTest"/>.</summary>
    PairedOneHour,

    /// <summary>4 h with a complete temporary drain at 60 min.</summary>
    TemporaryDrain,

    /// <summary>Permeability analysis with a macromolecular volume marker.</summary>
    Permeability,

    /// <summary>Collection of all drains and the urine of a day; see <see cref="CollectedDay"/>.</summary>
    Collection,
}
