namespace Transport.Analysis;

/// <summary>Tests, fits, chooses and judges, one patient after another. One per thread.</summary>
internal sealed class StrategyWorker(StrategyStudyDesign design)
{
    private RegimenTable? table;

    /// <summary>The patient, what a clinic knows of him, and the regimens to choose among.</summary>
    public (VirtualPatient Truth, TestedPatient Known, RegimenTable Table) Meet(int number, RunControl control)
    {
        control.Cancellation.ThrowIfCancellationRequested();
        var truth = design.Population[design.Seed, number];
        if (table is null || table.Patient != truth.Patient)
        {
            table = new(truth.Patient, design.SpaceOf(truth.Patient), design.Limits);
        }

        try
        {
            var test = SimulatedTest.Run(truth.Patient, truth.Membrane, truth.Seed, design.Test);
            var fit = MembraneFit.Run([ObservedExchange.From(test)], design.Fit, new() { Cancellation = control.Cancellation });
            return (truth, new(truth, test, fit, table), table);
        }
        catch (Exception failure) when (failure is ArgumentException or IntegrationException)
        {
            throw new InvalidOperationException(FormattableString.Invariant($"Patient {number} (seed {truth.Seed}) could not be tested and fitted: {failure.Message}"), failure);
        }
    }

    public StrategyRow[] Rows(int number, RunControl control)
    {
        var (truth, known, regimens) = Meet(number, control);
        var best = regimens.LeastLoss(truth.Membrane, design.Loss, control).Loss;
        return [.. design.Strategies.Select(strategy =>
        {
            var regimen = strategy.Choose(known, control);
            var figures = regimens.Figures(truth.Membrane, regimen);
            return new StrategyRow
            {
                Patient = number,
                Seed = truth.Seed,
                Category = known.Category,
                DiffusionAreaCentimeters = Area(truth.Membrane),
                FittedDiffusionAreaCentimeters = Area(known.Fit.Membrane),
                OsmoticConductanceMicroliters = Conductance(truth.Membrane),
                FittedOsmoticConductanceMicroliters = Conductance(known.Fit.Membrane),
                Strategy = strategy.Name,
                Regimen = regimen.Describe(),
                UltrafiltrationMilliliters = figures[(int)RegimenMeasure.Ultrafiltration],
                UreaDose = figures[(int)RegimenMeasure.UreaDose],
                CreatinineClearanceLiters = figures[(int)RegimenMeasure.CreatinineClearance],
                SodiumRemovedMillimoles = figures[(int)RegimenMeasure.SodiumRemoved],
                GlucoseAbsorbedGrams = figures[(int)RegimenMeasure.GlucoseAbsorbed],
                FluidUsedLiters = figures[(int)RegimenMeasure.FluidUsed],
                Cycles = (int)figures[(int)RegimenMeasure.Cycles],
                LossGrams = design.Loss.Of(figures),
                BestLossGrams = best,
            };
        })];

        double Area(ThreePoreMembrane membrane) => membrane.DiffusionArea.Centimeters / truth.Patient.SurfaceFactor;

        double Conductance(ThreePoreMembrane membrane) =>
            1000 * membrane.OsmoticConductanceToGlucose.MillilitersPerMinutePerMillimeterOfMercury / truth.Patient.SurfaceFactor;
    }
}
