using System.Globalization;
using BenchmarkDotNet.Running;
using Transport.Benchmarks;

// "performance [page]" times the library against its peers and writes the page; "fits" its fits alone; "search [largest]" times the regimen search on grids up to that size; anything else goes to BenchmarkDotNet.
if (args is ["performance", .. var rest])
{
    PerformanceReport.Run(rest.Length > 0 ? rest[0] : Path.Combine("docs", "performance.md"));
}
else if (args is [NarrowLanes.Command])
{
    Console.Write(NarrowLanes.Measure());
}
else if (args is ["fits"])
{
    Console.WriteLine(FitTable.Make());
}
else if (args is ["search", .. var largest])
{
    SearchTable.Run(Console.Out, largest.Length > 0 ? int.Parse(largest[0], CultureInfo.InvariantCulture) : 1_000_000);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
