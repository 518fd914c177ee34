// A session owns the console, the current directory and the formatters of its process.
[assembly: CollectionBehavior(DisableTestParallelization = true)]
