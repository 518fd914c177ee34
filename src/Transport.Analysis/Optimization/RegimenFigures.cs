namespace Transport.Analysis;

/// <summary>Reads the measures of a day from what its ring of exchanges drains, or from a simulation. Of one patient and one panel.</summary>
internal sealed class RegimenFigures
{
    public const int Count = (int)RegimenMeasure.FluidOpened + 1;

    private const double MinutesPerDay = 1440;
    private const double LitersPerWeek = 10.08;

    private readonly SolutePanel panel;
    private readonly double[] plasma;
    private readonly double bodyWaterLiters;
    private readonly double surfaceFactor;
    private readonly double renalUreaDose;
    private readonly double renalCreatinine;
    private readonly SodiumCalibration calibration;
    private readonly CavityPressure pressure;
    private readonly int phosphate;
    private readonly int microglobulin;

    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="options">How regimens are simulated, with the panel.</param>
    /// <param name="pressure">Pressure against volume.</param>
    public RegimenFigures(Patient patient, RegimenOptions options, CavityPressure pressure)
    {
        panel = options.Panel;
        plasma = CavityContents.Of(patient.Plasma, panel);
        bodyWaterLiters = patient.BodyWater.Liters;
        surfaceFactor = patient.SurfaceFactor;
        renalUreaDose = patient.ResidualFunction.UreaClearance.LitersPerWeek / bodyWaterLiters;
        renalCreatinine = patient.ResidualFunction.FiltrationRate.LitersPerWeek / surfaceFactor;
        calibration = options.Sodium;
        this.pressure = pressure;
        phosphate = IndexOf(Solutes.Phosphate);
        microglobulin = IndexOf(Solutes.Beta2Microglobulin);
    }

    /// <summary>Whether a measure is known with this panel.</summary>
    public bool Has(RegimenMeasure measure) => measure switch
    {
        RegimenMeasure.PhosphateClearance => phosphate >= 0,
        RegimenMeasure.Beta2MicroglobulinClearance => microglobulin >= 0,
        _ => true,
    };

    /// <summary>What is known of an exchange before anything is simulated: infused volume and amounts.</summary>
    public double[] InfusedBy(in CycleKind kind)
    {
        var infused = new double[1 + panel.Count];
        if (kind.Solution is { } solution)
        {
            CavityContents.Write(solution, panel, infused.AsSpan(1));
            infused[0] = kind.Fill;
            for (var i = 1; i < infused.Length; i++)
            {
                infused[i] *= kind.Fill;
            }
        }

        return infused;
    }

    /// <summary>The measures that come of a ring.</summary>
    /// <param name="sums">Volume and amounts drained, and the fullest moment.</param>
    /// <param name="infused">Volume and amounts infused.</param>
    /// <param name="into">The measures in order; those that are known beforehand are left alone.</param>
    /// <param name="hasPeak">Whether the fullest moment is known.</param>
    public void Read(ReadOnlySpan<double> sums, ReadOnlySpan<double> infused, Span<double> into, bool hasPeak = true)
    {
        into[(int)RegimenMeasure.Ultrafiltration] = sums[0] - infused[0];
        var sodium = (sums[1 + SolutePanel.Sodium] - infused[1 + SolutePanel.Sodium]) / 1000;
        into[(int)RegimenMeasure.SodiumRemoved] = calibration.FactorFor(sodium) * sodium;
        into[(int)RegimenMeasure.UreaDose] = LitersPerWeek * Clearance(SolutePanel.Urea, sums, infused) / bodyWaterLiters + renalUreaDose;
        into[(int)RegimenMeasure.CreatinineClearance] = LitersPerWeek * Clearance(SolutePanel.Creatinine, sums, infused) / surfaceFactor + renalCreatinine;
        into[(int)RegimenMeasure.PhosphateClearance] = phosphate < 0 ? 0 : LitersPerWeek * Clearance(phosphate, sums, infused);
        into[(int)RegimenMeasure.Beta2MicroglobulinClearance] = microglobulin < 0 ? 0 : LitersPerWeek * Clearance(microglobulin, sums, infused);
        into[(int)RegimenMeasure.GlucoseAbsorbed] =
            1e-6 * Solutes.Glucose.MolarMassGramsPerMole * (infused[1 + SolutePanel.Glucose] - sums[1 + SolutePanel.Glucose]);
        if (hasPeak)
        {
            Fullness(sums[^1], into);
        }
    }

    /// <summary>The same from a simulation.</summary>
    public void Read(RegimenOutcome outcome, Span<double> into)
    {
        into[(int)RegimenMeasure.Ultrafiltration] = outcome.Ultrafiltration.Milliliters;
        into[(int)RegimenMeasure.SodiumRemoved] = outcome.SodiumRemoved.Millimoles;
        into[(int)RegimenMeasure.UreaDose] = outcome.UreaDose.TotalKtOverV;
        into[(int)RegimenMeasure.CreatinineClearance] = outcome.CreatinineDose.Total.LitersPerWeek;
        into[(int)RegimenMeasure.PhosphateClearance] = phosphate < 0 ? 0 : outcome.Solutes[phosphate].Clearance!.Value.LitersPerWeek;
        into[(int)RegimenMeasure.Beta2MicroglobulinClearance] = microglobulin < 0 ? 0 : outcome.Solutes[microglobulin].Clearance!.Value.LitersPerWeek;
        into[(int)RegimenMeasure.GlucoseAbsorbed] = outcome.GlucoseAbsorbed.Grams;
        Fullness(outcome.Peak.Volume.Milliliters, into);
    }

    /// <summary>The same, the ultrafiltration with the model's discrepancy.</summary>
    /// <returns>That.</returns>
    public ModelMiss Read(RegimenOutcome outcome, RegimenSearchOptions search, Span<double> into)
    {
        Read(outcome, into);
        var miss = DailyDoubt.ModelForm(outcome, search.Layers, search.Tested);
        into[(int)RegimenMeasure.Ultrafiltration] += miss.Shift;
        return miss;
    }

    /// <summary>The measures that a regimen has whoever uses it.</summary>
    /// <param name="regimen">The regimen.</param>
    /// <param name="into">The measures in order.</param>
    /// <param name="bags">Counts its bags; null where nobody asks for them.</param>
    public static void ReadPlan(Regimen regimen, Span<double> into, BagCounter? bags = null)
    {
        if (bags is not null)
        {
            (into[(int)RegimenMeasure.Bags], into[(int)RegimenMeasure.FluidOpened]) = bags.Of(regimen);
        }

        into[(int)RegimenMeasure.NightLength] = regimen.NightLength.TotalHours;
        into[(int)RegimenMeasure.FluidUsed] = regimen.FluidInAll.Liters;
        into[(int)RegimenMeasure.StrongestExchanges] = regimen.Exchanges.Count(exchange => RegimenFindings.IsStrongest(exchange.Solution));
        into[(int)RegimenMeasure.Cycles] = regimen.Night.Length;
    }

    private void Fullness(double milliliters, Span<double> into)
    {
        into[(int)RegimenMeasure.PeakVolume] = milliliters;
        into[(int)RegimenMeasure.PeakPressure] = pressure.At(Volume.FromMilliliters(milliliters)).CentimetersOfWater;
    }

    // mL/min
    private double Clearance(int solute, ReadOnlySpan<double> sums, ReadOnlySpan<double> infused) =>
        plasma[solute] > 0 ? (sums[1 + solute] - infused[1 + solute]) / plasma[solute] / MinutesPerDay : 0;

    private int IndexOf(Solute solute)
    {
        for (var i = 0; i < panel.Count; i++)
        {
            if (panel.Solutes[i] == solute)
            {
                return i;
            }
        }

        return -1;
    }
}
