using System.Diagnostics;
using Waywright;
using Waywright.Simulations;

var scene = new Scene(18, Shape.Bow(12), 1);
var (profile, errors) = scene.Sweep(3);
for (var round = 0; round < 4; round++)
{
    var watch = Stopwatch.StartNew();
    var stations = new PreparedStations(profile.Positions);
    var trials = ErrorTrials.Draw(stations, errors, 100_000, (ulong)round, default);
    Console.Write($"draw {watch.Elapsed.TotalMilliseconds:0.0} ");
    foreach (var (name, figure) in new (string, HeightFigure)[] { ("LSt", new LeastSquaresFigure(stations, StraightnessParameter.STRt)), ("LSp", new LeastSquaresFigure(stations, StraightnessParameter.STRp)), ("LSq", new LeastSquaresFigure(stations, StraightnessParameter.STRq)), ("EPt", new EndPointFigure(stations, StraightnessParameter.STRt)), ("MZ", new ZoneFigure(stations)), ("MZq", new ZoneRootFigure(stations)) })
    {
        watch.Restart();
        FigureTrials.Noise(figure, trials, default);
        Console.Write($"{name} noise {watch.Elapsed.TotalMilliseconds:0.0} ");
        watch.Restart();
        FigureTrials.Of(figure, profile.Heights.ToArray(), trials, default);
        Console.Write($"all {watch.Elapsed.TotalMilliseconds:0.0} ");
    }

    watch.Restart();
    ContactTrials.Shares(profile, trials, default);
    Console.WriteLine($"contacts {watch.Elapsed.TotalMilliseconds:0.0} ");
}
