namespace Transport.Analysis;

/// <summary>How a book is reviewed.</summary>
public sealed record RecordReviewOptions
{
    /// <summary>The strength of the patient's test: nights at others hold the model's discrepancy. Null: there was no test.</summary>
    public DialysisSolution? Tested { get; init; }

    /// <summary>Thresholds.</summary>
    public ReviewLimits Limits { get; init; } = ReviewLimits.Default;

    /// <summary>How nights differ.</summary>
    public NightNoise Noise { get; init; } = NightNoise.Default;

    /// <summary>What a slow loss may come from; an oracle of a study knows it.</summary>
    internal LikelihoodChart.Watch Losses { get; init; } = LikelihoodChart.Watch.SlowLoss(ChangeCause.FasterTransfer, ChangeCause.LowerConductance, ChangeCause.MoreFluidLoss);

    /// <summary>The defaults.</summary>
    public static RecordReviewOptions Default { get; } = new();
}
