namespace Transport;

/// <content>When and how much: peaks, minima and crossings.</content>
public sealed partial class DwellCourse
{
    private const int VolumeSlot = 0;
    private const int UreaSlot = 1 + SolutePanel.Urea;
    private const int GlucoseSlot = 1 + SolutePanel.Glucose;
    private const int SodiumSlot = 1 + SolutePanel.Sodium;

    /// <summary>When the volume was largest, and how large.</summary>
    public VolumePeak PeakUltrafiltration()
    {
        var time = Extreme(step => Bernstein.Derivative(trajectory.Polynomial(VolumeSlot, step)), minutes => trajectory.At(VolumeSlot, minutes));
        return new(time, NetUltrafiltrationAt(time)) { Volume = VolumeAt(time), IsAtEnd = time.TotalMinutes >= trajectory.End };
    }

    /// <summary>When the volume, after its peak, was back at that of the start: isovolemia. At zero where it never rose.</summary>
    /// <remarks>Where the volume is level and not yet back, as at 3.86 % from about 120 to 240 min (Nephrol Dial Transplant 1989;4:805, read), see the peak.</remarks>
    public Moment IsovolemicTime()
    {
        var start = trajectory.At(VolumeSlot, 0);
        var peak = PeakUltrafiltration();
        return peak.Time == TimeSpan.Zero ? Moment.At(TimeSpan.Zero) : First(peak.Time.TotalMinutes, step => Shifted(trajectory.Polynomial(VolumeSlot, step), -start));
    }

    /// <summary>
    /// Urea-glucose crossing time: when D/P of urea, rising, meets D/D0 of glucose, falling. At zero where urea led from the start.
    /// </summary>
    /// <remarks>
    /// D0 is the mixed fluid at the start of the dwell. Used in children to choose short dwells (memory). A faster membrane crosses earlier.
    /// </remarks>
    /// <exception cref="InvalidOperationException">Plasma holds no urea, or there was no glucose at the start.</exception>
    public Moment UreaGlucoseCrossing()
    {
        var glucose = GlucoseToInitialAt(TimeSpan.Zero);
        if (DialysateToPlasmaAt(Solutes.Urea, TimeSpan.Zero) >= glucose)
        {
            return Moment.At(TimeSpan.Zero);
        }

        // Both are amounts over the same volume, so the volume falls out.
        var perUrea = 1 / PlasmaLevels[SolutePanel.Urea];
        var perGlucose = -1 / ConcentrationAt(SolutePanel.Glucose, TimeSpan.Zero);
        return First(0, step => Sum(trajectory.Polynomial(UreaSlot, step), perUrea, trajectory.Polynomial(GlucoseSlot, step), perGlucose));
    }

    /// <summary>When dialysate sodium was lowest, and how low.</summary>
    public (TimeSpan Time, Concentration Sodium) SodiumMinimum()
    {
        // (M/V)′ has the roots of M′V − MV′.
        var time = Extreme(
            step =>
            {
                var (amount, volume) = (trajectory.Polynomial(SodiumSlot, step), trajectory.Polynomial(VolumeSlot, step));
                return Sum(
                    Bernstein.Product(Bernstein.Derivative(amount), volume), 1, Bernstein.Product(amount, Bernstein.Derivative(volume)), -1);
            },
            minutes => -trajectory.At(SodiumSlot, minutes) / trajectory.At(VolumeSlot, minutes));
        return (time, DialysateAt(Solutes.Sodium, time));
    }

    // The largest value is at an end of the dwell or where the slope changes its sign.
    private TimeSpan Extreme(Func<int, double[]> slope, Func<double, double> value) =>
        TimeSpan.FromMinutes(trajectory.Roots(slope).Prepend(0).Append(trajectory.End).MaxBy(value));

    private Moment First(double after, Func<int, double[]> difference)
    {
        foreach (var root in trajectory.Roots(difference))
        {
            if (root > after)
            {
                return Moment.At(TimeSpan.FromMinutes(root));
            }
        }

        return Moment.NotReached;
    }

    private static double[] Shifted(double[] polynomial, double by) => [.. polynomial.Select(coefficient => coefficient + by)];

    private static double[] Sum(double[] left, double leftFactor, double[] right, double rightFactor) =>
        [.. left.Zip(right, (one, other) => leftFactor * one + rightFactor * other)];
}
