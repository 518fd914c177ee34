using BenchmarkDotNet.Running;
using Transport.Benchmarks;

// "performance [page]" times the library against its peers and writes the page; "fits" its fits alone; "search" times the regimen search; anything else goes to BenchmarkDotNet.
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
else if (args is ["search"])
{
    SearchTable.Run(Console.Out);
}
else
{
    BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
}
