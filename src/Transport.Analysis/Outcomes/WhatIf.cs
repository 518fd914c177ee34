using System.Collections.Immutable;

namespace Transport.Analysis;

/// <summary>What a regimen would return if one thing were otherwise. Model, not advice: everything else is held as it is.</summary>
public sealed class WhatIf
{
    private WhatIf(RegimenKnob knob, RegimenOutlook present, ImmutableArray<WhatIfPoint> points) => (Knob, Present, Points) = (knob, present, points);

    /// <summary>What is turned.</summary>
    public RegimenKnob Knob { get; }

    /// <summary>The regimen as it is.</summary>
    public RegimenOutlook Present { get; }

    /// <summary>Where the knob was put, in the order in which it was asked for.</summary>
    public ImmutableArray<WhatIfPoint> Points { get; }

    /// <summary>Turns a knob over a range.</summary>
    /// <param name="patient">Whose plasma, kidneys and size.</param>
    /// <param name="ensemble">The membranes, at the patient's size.</param>
    /// <param name="regimen">The regimen as it is.</param>
    /// <param name="knob">What is turned.</param>
    /// <param name="values">Where to, in the knob's unit. A place that cannot be is a point with the reasons.</param>
    /// <param name="options">How to look at it.</param>
    /// <param name="control">Watches and stops the run.</param>
    /// <exception cref="RegimenException">The regimen as it is cannot be carried out.</exception>
    /// <exception cref="ArgumentException">There is no value, one is not finite, or a plasma level is missing.</exception>
    /// <exception cref="IntegrationException">A day could not be integrated.</exception>
    /// <exception cref="OperationCanceledException">The run was stopped.</exception>
    public static WhatIf Run(
        Patient patient,
        MembraneEnsemble ensemble,
        Regimen regimen,
        RegimenKnob knob,
        IEnumerable<double> values,
        OutlookOptions? options = null,
        RunControl? control = null)
    {
        ArgumentNullException.ThrowIfNull(patient);
        ArgumentNullException.ThrowIfNull(ensemble);
        ArgumentNullException.ThrowIfNull(regimen);
        ArgumentNullException.ThrowIfNull(knob);
        double[] places = [.. values];
        if (places.Length == 0 || places.Any(value => !double.IsFinite(value)))
        {
            throw new ArgumentException("Expected finite values, one or more.", nameof(values));
        }

        var turned = places.Select(value => Turned(patient, regimen, knob, value)).ToList();
        var possible = turned.Where(one => one.Case is not null).Select(one => one.Case!.Value).ToList();
        var rows = OutlookStage.Run([("now", patient, RegimenComparison.EveryDay(regimen.OrThrow())), .. possible], ensemble, options ?? OutlookOptions.Default, control ?? RunControl.None);
        var next = 1;
        return new(knob, rows[0],
        [
            .. turned.Select((one, i) => one.Case is null
                ? new WhatIfPoint(places[i], null, one.Findings)
                : new WhatIfPoint(places[i], rows[next], rows[next++].Findings)),
        ]);
    }

    private static ((string, Patient, RegimenWeek)? Case, IReadOnlyList<Finding> Findings) Turned(Patient patient, Regimen regimen, RegimenKnob knob, double value)
    {
        try
        {
            var (who, what) = knob.Turn(patient, regimen, value);
            return ((FormattableString.Invariant($"{knob.Name} {value:0.##} {knob.Unit}").TrimEnd(), who, RegimenComparison.EveryDay(what)), []);
        }
        catch (RegimenException impossible)
        {
            return (null, impossible.Findings);
        }
        catch (ArgumentOutOfRangeException impossible)
        {
            return (null, [new(Severity.Error, "knob-not-possible", $"The {knob.Name} cannot be there: {impossible.Message.Split(" (Parameter")[0]}")]);
        }
    }
}
