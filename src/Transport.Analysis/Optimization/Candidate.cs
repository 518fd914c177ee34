namespace Transport.Analysis;

/// <summary>One regimen of the grid with what it does at the ensemble's center, as plain numbers.</summary>
internal sealed class Candidate
{
    private readonly RegimenGrid? grid;
    private Regimen? made;

    /// <param name="index">Place in the grid; −1 of the present regimen.</param>
    /// <param name="regimen">The regimen.</param>
    /// <param name="bags">Counts its bags; null where nobody asks for them.</param>
    /// <param name="grid">Where the regimen can be had again; null: nowhere.</param>
    public Candidate(int index, Regimen regimen, BagCounter? bags = null, RegimenGrid? grid = null)
    {
        Index = index;
        made = regimen;
        this.grid = grid;
        RegimenFigures.ReadPlan(regimen, Figures, bags);
    }

    /// <summary>Place in the grid.</summary>
    public int Index { get; }

    public Regimen Regimen => made ??= grid![Index];

    /// <summary>Its exchanges in the catalog at hand; null where it is no ring.</summary>
    public RegimenRingOf? Ring { get; set; }

    /// <summary>Measures in order; the ultrafiltration with the model's discrepancy.</summary>
    public double[] Figures { get; } = new double[RegimenFigures.Count];

    /// <summary>What the model's discrepancy adds to the ultrafiltration.</summary>
    public ModelMiss ModelForm { get; private set; }

    /// <summary>Whether the figures are simulated and not a map's.</summary>
    public bool IsExact { get; private set; }

    /// <summary>Whether maps left open on which side of a bound it is; its tables are then simulated with every member.</summary>
    public bool IsOpen { get; set; }

    /// <summary>Why it is out; null while it is in.</summary>
    public DropReason? Dropped { get; set; }

    /// <summary>Why the screening put it out; it is kept only as one of the nearest.</summary>
    public DropReason? Reason { get; set; }

    /// <summary>Changes from the present regimen; known once ties are looked for.</summary>
    public int Changes { get; set; }

    public double this[RegimenMeasure measure] => Figures[(int)measure];

    public double Ultrafiltration => this[RegimenMeasure.Ultrafiltration];

    public double UreaDose => this[RegimenMeasure.UreaDose];

    public double Glucose => this[RegimenMeasure.GlucoseAbsorbed];

    public double Sodium => this[RegimenMeasure.SodiumRemoved];

    public double FluidUsed => 1000 * this[RegimenMeasure.FluidUsed];

    public int Strongest => (int)this[RegimenMeasure.StrongestExchanges];

    /// <summary>Lets go of what can be had again, so that many of them take little room.</summary>
    public void Forget()
    {
        made = grid is null ? made : null;
        Ring = null;
    }

    /// <summary>Takes the figures of the maps.</summary>
    public void Take(ReadOnlySpan<double> figures, ModelMiss modelForm)
    {
        figures.CopyTo(Figures);
        ModelForm = modelForm;
        Figures[(int)RegimenMeasure.Ultrafiltration] += modelForm.Shift;
    }

    /// <summary>Takes the figures of a simulation.</summary>
    public void Take(RegimenOutcome outcome, RegimenFigures reader, RegimenSearchOptions options)
    {
        ModelForm = reader.Read(outcome, options, Figures);
        IsExact = true;
    }
}
