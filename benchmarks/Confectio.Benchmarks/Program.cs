using BenchmarkDotNet.Running;

// dotnet run -c Release --project benchmarks/Confectio.Benchmarks -- --filter '*'
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
