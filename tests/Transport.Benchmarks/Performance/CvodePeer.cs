using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Transport.Benchmarks;

/// <summary>CVODE (Adams, fixed-point iteration) on the same equations, compiled when asked for and called directly.</summary>
internal sealed unsafe class CvodePeer : IDisposable
{
    private readonly nint library;
    private readonly delegate* unmanaged<int, double, double*, nint> create;
    private readonly delegate* unmanaged<nint, double*, double*, double*, int, double*, long> dwell;
    private readonly delegate* unmanaged<nint, double*, double, double, double, double*, double*, long> phase;
    private readonly delegate* unmanaged<nint, void> free;
    private readonly double[] scale;
    private nint peer;

    private CvodePeer(nint library, double[] scale)
    {
        this.library = library;
        this.scale = scale;
        create = (delegate* unmanaged<int, double, double*, nint>)NativeLibrary.GetExport(library, "peer_create");
        dwell = (delegate* unmanaged<nint, double*, double*, double*, int, double*, long>)NativeLibrary.GetExport(library, "peer_dwell");
        phase = (delegate* unmanaged<nint, double*, double, double, double, double*, double*, long>)NativeLibrary.GetExport(library, "peer_phase");
        free = (delegate* unmanaged<nint, void>)NativeLibrary.GetExport(library, "peer_free");
    }

    /// <summary>The peer; null where it cannot be compiled here.</summary>
    public static CvodePeer? Build(double[] scale)
    {
        var target = Path.Combine(Path.GetTempPath(), $"cvode-peer-{Environment.ProcessId}.so");
        string[] arguments =
        [
            "-O3", "-march=native", "-w", "-shared", "-fPIC", "-o", target, Path.Combine(AppContext.BaseDirectory, "Peers", "cvode_dwell.c"),
            "-lsundials_cvode", "-lsundials_nvecserial", "-lsundials_sunnonlinsolfixedpoint", "-lm",
        ];
        try
        {
            using var compiler = Process.Start(new ProcessStartInfo("gcc", arguments) { RedirectStandardError = true })!;
            compiler.StandardError.ReadToEnd();
            compiler.WaitForExit();
            return compiler.ExitCode == 0 ? new(NativeLibrary.Load(target), scale) : null;
        }
        catch (Exception missing) when (missing is System.ComponentModel.Win32Exception or DllNotFoundException)
        {
            return null;
        }
    }

    /// <summary>The tolerance from now on.</summary>
    public void Tolerate(double tolerance)
    {
        Release();
        fixed (double* sizes = scale)
        {
            peer = create(scale.Length - 4, tolerance, sizes);
        }
    }

    /// <summary>One dwell; evaluations of the right-hand side.</summary>
    public long Dwell(double[] coefficients, double[] start, double[] minutes, double[] states)
    {
        fixed (double* c = coefficients, s = start, m = minutes, out_ = states)
        {
            return Checked(dwell(peer, c, s, m, minutes.Length, out_));
        }
    }

    /// <summary>One phase; evaluations of the right-hand side.</summary>
    public long Phase(double[] coefficients, double instilled, double end, double target, ref double time, double[] state)
    {
        fixed (double* c = coefficients, s = state, t = &time)
        {
            return Checked(phase(peer, c, instilled, end, target, t, s));
        }
    }

    public void Dispose()
    {
        Release();
        NativeLibrary.Free(library);
    }

    private static long Checked(long evaluations) => evaluations >= 0 ? evaluations : throw new InvalidOperationException("CVODE failed.");

    private void Release()
    {
        if (peer != 0)
        {
            free(peer);
            peer = 0;
        }
    }
}
