namespace Transport;

/// <summary>One exchange as far as the cavity knows it: regimens that share it share what it does.</summary>
/// <param name="Solution">What runs in; null: nothing, the cavity stays dry.</param>
/// <param name="Fill">mL.</param>
/// <param name="Dwell">From the end of the fill to the start of the drain as planned, min; how long a dry time is.</param>
/// <param name="Drain">How long the drain is planned to take, min.</param>
/// <param name="IsNight">Whether the patient lies.</param>
/// <param name="HasTransient">Whether diffusion starts faster.</param>
/// <param name="Start">What it finds.</param>
internal readonly record struct CycleKind(
    DialysisSolution? Solution, double Fill, double Dwell, double Drain, bool IsNight, bool HasTransient, CycleStart Start = CycleStart.Residual)
{
    public bool IsDry => Solution is null;
}
