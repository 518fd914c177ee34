using System.Diagnostics;
using System.Globalization;

namespace Transport.Notebooks;

/// <summary>
/// Shows that a cell is still at work: after two seconds a bar with the time, once a second, and with the finished share where the run reports one.
/// It goes with the cell's end, so that no time stays in an output.
/// </summary>
internal sealed class CellProgress : IProgress<double>, IDisposable
{
    private static readonly TimeSpan Unremarkable = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(1);

    private readonly Lock _gate = new();
    private readonly Stopwatch _watch = Stopwatch.StartNew();
    private readonly Action<CellOutput> _emit;
    private readonly string _id;
    private readonly Timer _timer;
    private double _share = double.NaN;
    private bool _isShown;
    private bool _hasEnded;

    /// <param name="emit">Takes what is shown.</param>
    /// <param name="cell">The cell's number.</param>
    public CellProgress(Action<CellOutput> emit, int cell)
    {
        _emit = emit;
        _id = string.Create(CultureInfo.InvariantCulture, $"cell-{cell}-progress");
        _timer = new Timer(_ => Show(isEnd: false), null, Unremarkable, Beat);
    }

    /// <summary>The finished share, 0 to 1.</summary>
    public void Report(double value) => Volatile.Write(ref _share, value);

    /// <inheritdoc />
    public void Dispose()
    {
        _timer.Dispose();
        Show(isEnd: true);
    }

    private void Show(bool isEnd)
    {
        lock (_gate)
        {
            if (_hasEnded || (isEnd && !_isShown))
            {
                _hasEnded = true;
                return;
            }

            var share = Volatile.Read(ref _share);
            var known = double.IsFinite(share);
            var words = isEnd ? "" : string.Create(CultureInfo.InvariantCulture, $"{(known ? $"{100 * share:0} %, " : "")}{_watch.Elapsed.TotalSeconds:0} s");
            var value = known ? string.Create(CultureInfo.InvariantCulture, $" value=\"{share:0.###}\"") : "";
            var forms = new Dictionary<string, string>(StringComparer.Ordinal)
            {
                [MediaType.Html] = isEnd ? "" : $"<progress aria-label=\"working\"{value}></progress> {words}",
                [MediaType.PlainText] = words,
            };
            _emit(new CellOutput.Display(forms, IsResult: false) { Id = _id, IsUpdate = _isShown });
            (_isShown, _hasEnded) = (true, isEnd);
        }
    }
}
