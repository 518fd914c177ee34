using static Transport.Tests.Fitting.Statistics.Slopes;

namespace Transport.Tests.Fitting.Statistics;

/// <summary>The models of the certified regressions, as their data files print them: b are the parameters, o is y, x (and a second x).</summary>
internal static class NistModels
{
    public static Func<Slopes[], double[], Slopes> Of(string name) => name switch
    {
        "misra1a" or "boxbod" => (b, o) => b[0] * (1 - Exp(-b[1] * o[1])),
        "misra1b" => (b, o) => b[0] * (1 - 1 / Square(1 + b[1] * o[1] / 2)),
        "misra1c" => (b, o) => b[0] * (1 - Power(1 + 2 * b[1] * o[1], -0.5)),
        "misra1d" => (b, o) => b[0] * b[1] * o[1] / (1 + b[1] * o[1]),
        "chwirut1" or "chwirut2" => (b, o) => Exp(-b[0] * o[1]) / (b[1] + b[2] * o[1]),
        "lanczos1" or "lanczos2" or "lanczos3" => (b, o) => b[0] * Exp(-b[1] * o[1]) + b[2] * Exp(-b[3] * o[1]) + b[4] * Exp(-b[5] * o[1]),
        "gauss1" or "gauss2" or "gauss3" => (b, o) =>
            b[0] * Exp(-b[1] * o[1]) + b[2] * Exp(-Square((o[1] - b[3]) / b[4])) + b[5] * Exp(-Square((o[1] - b[6]) / b[7])),
        "danwood" => (b, o) => b[0] * Power(o[1], b[1]),
        "kirby2" => (b, o) => Polynomial(o[1], b[0], b[1], b[2]) / Polynomial(o[1], 1, b[3], b[4]),
        "hahn1" or "thurber" => (b, o) => Polynomial(o[1], b[0], b[1], b[2], b[3]) / Polynomial(o[1], 1, b[4], b[5], b[6]),
        "nelson" => (b, o) => b[0] - b[1] * o[1] * Exp(-b[2] * o[2]),
        "mgh17" => (b, o) => b[0] + b[1] * Exp(-o[1] * b[3]) + b[2] * Exp(-o[1] * b[4]),
        "roszman1" => (b, o) => b[0] - b[1] * o[1] - Atan(b[2] / (o[1] - b[3])) / Math.PI,
        "enso" => (b, o) => b[0] + Wave(o[1], 12, b[1], b[2]) + Wave(o[1], b[3], b[4], b[5]) + Wave(o[1], b[6], b[7], b[8]),
        "mgh09" => (b, o) => b[0] * (o[1] * o[1] + o[1] * b[1]) / (o[1] * o[1] + o[1] * b[2] + b[3]),
        "mgh10" => (b, o) => b[0] * Exp(b[1] / (o[1] + b[2])),
        "rat42" => (b, o) => b[0] / (1 + Exp(b[1] - b[2] * o[1])),
        "rat43" => (b, o) => b[0] / Power(1 + Exp(b[1] - b[2] * o[1]), 1 / b[3]),
        "eckerle4" => (b, o) => b[0] / b[1] * Exp(-0.5 * Square((o[1] - b[2]) / b[1])),
        "bennett5" => (b, o) => b[0] * Power(b[1] + o[1], -1 / b[2]),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "Expected a certified problem."),
    };

    private static Slopes Square(Slopes a) => a * a;

    private static Slopes Polynomial(double x, params Slopes[] coefficients) =>
        coefficients.Reverse().Aggregate((Slopes)0.0, (sum, coefficient) => sum * x + coefficient);

    private static Slopes Wave(double x, Slopes period, Slopes cosine, Slopes sine) =>
        cosine * Cos(2 * Math.PI * x / period) + sine * Sin(2 * Math.PI * x / period);
}
