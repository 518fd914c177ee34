namespace Transport.Analysis;

/// <summary>One regimen of the grid with what it does at the ensemble's center, as plain numbers.</summary>
internal sealed class Candidate(int index, Regimen regimen, int changes)
{
    /// <summary>Place in the grid.</summary>
    public int Index { get; } = index;

    public Regimen Regimen { get; } = regimen;

    /// <summary>Changes from the present regimen.</summary>
    public int Changes { get; } = changes;

    /// <summary>Exchanges with a strongest glucose.</summary>
    public int Strongest { get; } = CountStrongest(regimen);

    public double FluidUsed { get; } = regimen.FluidInAll.Milliliters;

    /// <summary>Why it is out; null while it is in. What is out needs its outcome no more.</summary>
    public DropReason? Dropped
    {
        get;
        set
        {
            field = value;
            Outcome = value is null ? Outcome : null;
        }
    }

    /// <summary>Its day at the ensemble's center, without a timeline; null before it was simulated, and once it is out.</summary>
    public RegimenOutcome? Outcome { get; private set; }

    /// <summary>mL, with the model's discrepancy.</summary>
    public double Ultrafiltration { get; private set; }

    public double UreaDose { get; private set; }

    /// <summary>g.</summary>
    public double Glucose { get; private set; }

    /// <summary>mmol, calibrated.</summary>
    public double Sodium { get; private set; }

    /// <summary>mL.</summary>
    public double Peak { get; private set; }

    /// <summary>What the model's discrepancy adds to the ultrafiltration, and its standard deviation, mL.</summary>
    public (double Shift, double Deviation) ModelForm { get; private set; }

    public void Take(RegimenOutcome outcome, RegimenSearchOptions options)
    {
        Outcome = outcome;
        ModelForm = DailyDoubt.ModelForm(outcome, options);
        Ultrafiltration = outcome.Ultrafiltration.Milliliters + ModelForm.Shift;
        UreaDose = outcome.UreaDose.TotalKtOverV;
        Glucose = outcome.GlucoseAbsorbed.Grams;
        Sodium = outcome.SodiumRemoved.Millimoles;
        Peak = outcome.Peak.Volume.Milliliters;
    }

    private static int CountStrongest(Regimen regimen) => regimen.Exchanges.Count(exchange => RegimenFindings.IsStrongest(exchange.Solution));
}
