namespace Transport.Analysis;

/// <summary>What a fit eats: the conditions of one exchange, what was observed of it with errors, and its own unknowns.</summary>
/// <remarks>A test, one of two paired tests and a recorded night each become one; a fit takes a list of them.</remarks>
public sealed record ObservedExchange
{
    private const double UnknownResidual = 0.3;
    private const double MeasuredResidual = 0.15;

    // Transfer during instillation biases a dilution, whatever its assays promise.
    private const double LeastOfDilution = 0.1;

    /// <summary>Whose exchange it was.</summary>
    public required Patient Patient { get; init; }

    /// <summary>Solution, fill, duration and residual fluid; the residual volume is the centre of <see cref="ResidualLogDeviation"/>.</summary>
    /// <exception cref="ArgumentException">It is not a glucose dwell, of which alone ratios and volume tell the membrane.</exception>
    public required Dwell Dwell
    {
        get;
        init
        {
            ArgumentNullException.ThrowIfNull(value);
            field = value.Solution.Agent == OsmoticAgent.Glucose
                ? value
                : throw new ArgumentException($"A fit needs an exchange with glucose, and {value.Solution.Name} is none.", nameof(Dwell));
        }
    }

    /// <summary>What was observed.</summary>
    public required IReadOnlyList<Observation> Observations { get; init; }

    /// <summary>Doubt about the residual volume, as the standard deviation of its logarithm.</summary>
    /// <remarks>0.3 where nobody measured it (200 to 300 mL are usual in adults, memory), 0.15 where the sheet gives it; by dilution its own, at
    /// least 0.1 (choices).</remarks>
    public required double ResidualLogDeviation { get; init; }

    /// <summary>How the observations were made from the test: overfill, missing correction, missing plasma.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>The exchange of an equilibration test.</summary>
    /// <remarks>
    /// Fitted are creatinine and glucose after time zero, sodium, albumin and immunoglobulin G, the net ultrafiltration, and the volume of a temporary drain. Urea
    /// is not: its permeability is tied to creatinine's. It is predicted and shown.
    /// </remarks>
    /// <exception cref="ArgumentException">The solution is not a glucose solution, or its strength is in doubt.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The fill is not positive, or the dwell not between 0 and 48 h.</exception>
    public static ObservedExchange From(EquilibrationTest test, AssayErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(test);
        if (test.IsStrengthInDoubt)
        {
            throw new ArgumentException("A fit rests on the glucose of the bag, and the glucose at 0 min belongs to another. Correct the solution, or the sample.", nameof(test));
        }

        errors ??= AssayErrors.Default;
        var findings = new List<Finding>();
        var diluted = test.ResidualVolume is null ? ResidualVolumeByDilution.Of(test, EquilibrationIndicesOptions.Default) : null;
        var residual = test.ResidualVolume ?? (diluted is { Volume.Milliliters: > 0 } ? diluted.Volume : TypicalResidual(test.Patient));
        var entered = test.EnteredVolume;
        var volumeDeviation = errors.VolumeDeviation.Milliliters;
        if (test.FillBasis == FillBasis.Label && test.Overfill is null)
        {
            entered += errors.UnknownOverfill;
            volumeDeviation = Math.Sqrt(volumeDeviation * volumeDeviation + Math.Pow(errors.UnknownOverfillDeviation.Milliliters, 2));
            findings.Add(new(Severity.Warning, "fit-overfill-assumed",
                $"The fill is a label's: the fit takes {errors.UnknownOverfill} of overfill to have entered with it, give or take {errors.UnknownOverfillDeviation}. Weigh the bag to remove this doubt."));
        }

        if (test.CreatinineAssay is { Corrects: false, Method: not CreatinineMethod.Enzymatic })
        {
            findings.Add(new(Severity.Warning, "fit-creatinine-uncorrected",
                "Creatinine is fitted as measured. If the assay reads glucose as creatinine, the transfer is overestimated: give the laboratory's factor."));
        }

        var observations = new List<Observation>();
        new RatioObservations(test, errors).AddTo(observations);
        if (test.TemporaryDrain is { } temporary && temporary.Time < test.Dwell)
        {
            observations.Add(new(
                ObservedQuantity.NetUltrafiltrationMilliliters, temporary.Time, (temporary.Volume - entered).Milliliters, volumeDeviation, 0, IsFitted: true));
        }

        if (test.DrainedVolume is { } drained)
        {
            observations.Add(new(
                ObservedQuantity.NetUltrafiltrationMilliliters, test.Dwell, (drained - entered).Milliliters, volumeDeviation, 0, IsFitted: true));
        }
        else
        {
            findings.Add(new(Severity.Warning, "fit-no-volume",
                "The drained volume was not measured: the hydraulic conductance stays what the population gives, and ultrafiltration is as uncertain as in any patient."));
        }

        return new()
        {
            Patient = test.Patient,
            Dwell = new(test.Solution, entered, test.Dwell, ResidualFluid.Used(residual, test.Patient.Plasma)),
            Observations = observations,
            ResidualLogDeviation = test.ResidualVolume is not null ? MeasuredResidual
                : diluted is { Volume.Milliliters: > 0, Index.StandardDeviation: { } deviation }
                    ? Math.Clamp(deviation / diluted.Volume.Milliliters, LeastOfDilution, UnknownResidual)
                    : UnknownResidual,
            Findings = findings,
        };
    }

    /// <summary>The two exchanges of a pair: one membrane, a residual volume for each.</summary>
    /// <exception cref="ArgumentException">The tests are of two people, or one cannot be fitted.</exception>
    public static IReadOnlyList<ObservedExchange> From(PairedTest pair, AssayErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(pair);
        return pair.Findings.FirstOrDefault(finding => finding.Severity == Severity.Error) is { } reason
            ? throw new ArgumentException(reason.Message, nameof(pair))
            : [From(pair.Weak.Test, errors), From(pair.Strong.Test, errors)];
    }

    /// <summary>An exchange of which the drained volume alone is known: an overnight dwell, a bag of a collection.</summary>
    /// <param name="patient">Whose exchange it was.</param>
    /// <param name="dwell">Solution, fill, duration and what was in the cavity before.</param>
    /// <param name="drained">Volume drained.</param>
    /// <param name="errors">Errors of the measurement; its volume's counts.</param>
    /// <exception cref="ArgumentException">The solution is not a glucose solution.</exception>
    public static ObservedExchange FromDrain(Patient patient, Dwell dwell, Volume drained, AssayErrors? errors = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(dwell);
        return new()
        {
            Patient = patient,
            Dwell = dwell,
            ResidualLogDeviation = UnknownResidual,
            Findings = [],
            Observations =
            [
                new(
                    ObservedQuantity.NetUltrafiltrationMilliliters,
                    dwell.Duration,
                    (drained - dwell.Fill).Milliliters,
                    (errors ?? AssayErrors.Default).VolumeDeviation.Milliliters,
                    0,
                    IsFitted: true),
            ],
        };
    }

    /// <summary>250 mL per 1.73 m² (200 to 300 mL are usual in adults, memory).</summary>
    public static Volume TypicalResidual(Patient patient)
    {
        ArgumentNullException.ThrowIfNull(patient);
        return ResidualFluid.UsualVolume(patient.BodySurface);
    }

    /// <exception cref="ArgumentException">Some are of somebody else.</exception>
    internal static void RequireOf(Patient patient, IReadOnlyList<ObservedExchange> exchanges)
    {
        if (exchanges.Any(exchange => exchange.Patient.Code != patient.Code))
        {
            throw new ArgumentException($"Expected exchanges and nights of one person; some are of '{patient.Code}', some not.", nameof(exchanges));
        }
    }
}
