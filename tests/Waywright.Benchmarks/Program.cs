using Waywright.Benchmarks;

if (args is [GrowthRun.Argument, var folder, var rails])
{
    GrowthRun.Print(folder, rails);
    return 0;
}

Benchmark[] known = [new BeltsBenchmark(), new GrowthBenchmark(), new KernelBenchmark(), new MountingBenchmark(), new PlucksBenchmark(), new PublishBenchmark(), new ReadingBenchmark(), new StraightnessBenchmark(), new UncertaintyBenchmark()];
var names = string.Join(", ", known.Select(b => b.Name));
var wanted = args is ["all"] ? known : [.. known.Where(b => args.Contains(b.Name))];
if (wanted.Length == 0 || (args is not ["all"] && wanted.Length != args.Length))
{
    Console.Error.WriteLine($"usage: dotnet run --project tests/Waywright.Benchmarks -- all | NAME...   (names: {names})");
    return 2;
}

foreach (var benchmark in wanted)
{
    var page = Report.Page(benchmark.Title, benchmark.Run(), Machine.Describe());
    var path = Path.Combine(Repository.Root, "docs", "benchmarks", benchmark.Name + ".md");
    Directory.CreateDirectory(Path.GetDirectoryName(path)!);
    File.WriteAllText(path, page);
    Console.WriteLine(page);
    Console.WriteLine(path);
}

return 0;
