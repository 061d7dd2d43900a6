using System.Globalization;
using nietras.SeparatedValues;

namespace Waywright.Benchmarks;

/// <summary>Reading a large sweeps file, against pandas and against splitting its rows and doing nothing with them.</summary>
internal sealed class ReadingBenchmark : Benchmark
{
    private const long FileBytes = 200_000_000;
    private const int Rounds = 15;

    public override string Name => "reading";

    public override string Title => "Reading a sweeps file of 200 MB";

    public override Findings Run()
    {
        var file = Path.GetTempFileName();
        try
        {
            var rows = Write(file);
            using var peer = new PythonPeer("Reading/reading_peer.py", file);
            var readings = Count(file);
            if (readings != rows || (long)peer.Answer("pandas") != rows)
                throw new InvalidOperationException("The readers disagree on the number of readings, so their times mean nothing.");
            var timings = Interleaved.Measure(
            [
                Contender.Here("SweepBatch.Read", "from the path to sweeps: four names and two numbers of each row read and checked, passes told apart, sorted and kept. A row that repeats the one before it but for its numbers is told by comparing.", count => Repeat(count, () => SweepBatch.Read(file))),
                Contender.Here("bare row splitter", "Sep over the same file: every row found and every field's span asked for, nothing read.", count => Repeat(count, () => Split(file))),
                peer.Contender("pandas", "pandas.read_csv", "pandas.read_csv with its C engine into a data frame; no checks, no grouping."),
            ], Rounds);
            return new Findings(
                [
                    $"{rows.ToString("#,0", CultureInfo.InvariantCulture)} invented readings in {(new FileInfo(file).Length / 1e6).ToString("0", CultureInfo.InvariantCulture)} MB: rails x 2 faces x 3 passes x 18 stations. The file is in the page cache.",
                    $"{Rounds} rounds; in each, every contender reads the file once, one after the other in one run. A ratio is the median of the ratios within rounds. Each contender works on one core; the .NET runtime's collector and compiler have threads of their own beside it, and other work on the machine was not kept away.",
                    "To rerun, with Debian's python3-pandas installed: `dotnet run -c Release --project tests/Waywright.Benchmarks -- reading`.",
                ],
                timings,
                [new("pandas.read_csv", "SweepBatch.Read", ">= 5"), new("SweepBatch.Read", "bare row splitter", "<= 2")],
                [peer.Ask("versions") + " (Debian)"]);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private static void Repeat(int count, Func<object> read)
    {
        for (var i = 0; i < count; i++)
            GC.KeepAlive(read());
    }

    private static long Count(string file) => SweepBatch.Read(file).Sweeps.Sum(s => (long)s.ReadingCount);

    private static long Split(string file)
    {
        using var text = new StreamReader(file);
        using var reader = Sep.New(',').Reader(o => o with { HasHeader = false }).From(text);
        long characters = 0;
        while (reader.MoveNext())
        {
            var row = reader.Current;
            for (var c = 0; c < row.ColCount; c++)
                characters += row[c].Span.Length;
        }

        return characters;
    }

    private static long Write(string file)
    {
        using var writer = new StreamWriter(file);
        writer.NewLine = "\n";
        writer.WriteLine("rail,face,pass,direction,position_mm,reading_um");
        var random = new Random(1);
        long rows = 0;
        for (var rail = 1; writer.BaseStream.Position < FileBytes; rail++)
        {
            foreach (var face in new[] { "side", "top" })
            {
                for (var pass = 1; pass <= 3; pass++)
                {
                    for (var station = 0; station < 18; station++, rows++)
                        writer.WriteLine(string.Create(CultureInfo.InvariantCulture, $"R{rail:000000},{face},{pass},{(pass % 2 == 1 ? "forward" : "back")},{(station * 18.5) + 10:0.0},{(random.NextDouble() * 60) - 30:0.0}"));
                }
            }
        }

        return rows;
    }
}
