using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace Transport.Notebooks;

/// <summary>Whoever started this kernel. A server that dies without a word must not leave kernels behind.</summary>
internal static class ParentProcess
{
    /// <summary>Ends when the process named by <c>JPY_PARENT_PID</c> is gone; never, where none is named.</summary>
    public static async Task GoneAsync()
    {
        if (!int.TryParse(Environment.GetEnvironmentVariable("JPY_PARENT_PID"), CultureInfo.InvariantCulture, out var id) || id <= 1)
        {
            await Task.Delay(Timeout.Infinite);
            return;
        }

        try
        {
            using var parent = Process.GetProcessById(id);
            await parent.WaitForExitAsync();
        }
        catch (ArgumentException)
        {
            // Gone already.
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException)
        {
            await Task.Delay(Timeout.Infinite); // it may not be watched
        }
    }
}
