using System.Collections.Generic;
using System.Threading;

namespace Waywright;

/// <summary>Works figures out of one set of trials, each simulation once.</summary>
internal sealed class FigureSet(Profile profile, ErrorTrials trials, CancellationToken cancel, ErrorTrials? between = null)
{
    private readonly PreparedStations _stations = trials.Stations;
    private FigureTrials? _zone;

    public UncertainFigure[] All()
    {
        var all = new List<UncertainFigure>();
        FigureTrials? leastSquaresRoot = null;
        foreach (var parameter in new[] { StraightnessParameter.STRt, StraightnessParameter.STRp, StraightnessParameter.STRv, StraightnessParameter.STRq })
        {
            var leastSquares = TrialsOf(new LeastSquaresFigure(_stations, parameter));
            if (parameter == StraightnessParameter.STRq)
                leastSquaresRoot = leastSquares;
            all.Add(new UncertainFigure(ReferenceLineKind.EndPoints, parameter, TrialsOf(new EndPointFigure(_stations, parameter))));
            all.Add(new UncertainFigure(ReferenceLineKind.LeastSquares, parameter, leastSquares));
            all.Add(parameter == StraightnessParameter.STRq
                ? new UncertainFigure(ReferenceLineKind.MinimumZone, parameter, TrialsOf(new ZoneRootFigure(_stations)), leastSquaresRoot!, ZoneTrials, 1, 0.5)
                : Zone(parameter));
        }

        return [.. all];
    }

    /// <summary>The zone's middle lies half way: STRp = STRv = STRt / 2.</summary>
    public UncertainFigure Zone(StraightnessParameter parameter)
        => new(ReferenceLineKind.MinimumZone, parameter, ZoneTrials, parameter == StraightnessParameter.STRt ? 1 : 0.5);

    public UncertainFigure? Local(double windowMm)
    {
        var windows = LocalStraightness.Windows(profile, windowMm);
        return windows.Length == 0
            ? null
            : new UncertainFigure(ReferenceLineKind.MinimumZone, StraightnessParameter.STRt, TrialsOf(new ZoneFigure(_stations, profile, windows))) { WindowMm = windowMm };
    }

    public FigureTrials ZoneTrials => _zone ??= TrialsOf(new ZoneFigure(_stations));

    private FigureTrials TrialsOf(HeightFigure figure) => FigureTrials.Of(figure, profile.Heights, trials, between, cancel);
}
