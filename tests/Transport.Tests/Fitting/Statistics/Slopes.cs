namespace Transport.Tests.Fitting.Statistics;

/// <summary>A value with its derivatives by any number of parameters, for the certified models.</summary>
internal readonly record struct Slopes(double Value, double[] By)
{
    public static Slopes Parameter(double value, int index, int count)
    {
        var by = new double[count];
        by[index] = 1;
        return new(value, by);
    }

    public static implicit operator Slopes(double value) => new(value, []);

    public static Slopes operator +(Slopes a, Slopes b) => Chain(a.Value + b.Value, a, 1, b, 1);

    public static Slopes operator -(Slopes a, Slopes b) => Chain(a.Value - b.Value, a, 1, b, -1);

    public static Slopes operator -(Slopes a) => 0 - a;

    public static Slopes operator *(Slopes a, Slopes b) => Chain(a.Value * b.Value, a, b.Value, b, a.Value);

    public static Slopes operator /(Slopes a, Slopes b) => Chain(a.Value / b.Value, a, 1 / b.Value, b, -a.Value / (b.Value * b.Value));

    public static Slopes Exp(Slopes a) => Of(a, Math.Exp(a.Value), Math.Exp(a.Value));

    public static Slopes Sin(Slopes a) => Of(a, Math.Sin(a.Value), Math.Cos(a.Value));

    public static Slopes Cos(Slopes a) => Of(a, Math.Cos(a.Value), -Math.Sin(a.Value));

    public static Slopes Atan(Slopes a) => Of(a, Math.Atan(a.Value), 1 / (1 + a.Value * a.Value));

    public static Slopes Log(Slopes a) => Of(a, Math.Log(a.Value), 1 / a.Value);

    public static Slopes Power(Slopes a, Slopes exponent) => Exp(exponent * Log(a));

    private static Slopes Of(Slopes a, double value, double slope) => Chain(value, a, slope, 0, 0);

    private static Slopes Chain(double value, Slopes a, double byA, Slopes b, double byB)
    {
        var by = new double[Math.Max(a.By.Length, b.By.Length)];
        for (var j = 0; j < by.Length; j++)
        {
            by[j] = (a.By.Length > 0 ? a.By[j] * byA : 0) + (b.By.Length > 0 ? b.By[j] * byB : 0);
        }

        return new(value, by);
    }
}
