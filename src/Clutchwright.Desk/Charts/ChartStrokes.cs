using Clutchwright.Pedigrees.Charts;

namespace Clutchwright.Desk.Charts;

/// <summary>Takes the lines of a chart apart into strokes of a pen.</summary>
internal static class ChartStrokes
{
    public static IReadOnlyList<ChartStroke> Of(PedigreeChart chart)
    {
        var strokes = new List<ChartStroke>();
        strokes.AddRange(chart.Arcs.Select(a => new ChartStroke(StrokeUse.Again, Spots(a.Path))));
        foreach (var sibship in chart.Sibships)
        {
            foreach (var descent in sibship.Descents)
            {
                strokes.Add(new(StrokeUse.Descent, [Spot(descent.From), new(descent.From.X, sibship.LineY)], IsDashed: chart.Matings[descent.Mating].IsPossible));
            }

            if (sibship.LineFrom < sibship.LineTo)
            {
                strokes.Add(new(StrokeUse.Descent, [new(sibship.LineFrom, sibship.LineY), new(sibship.LineTo, sibship.LineY)]));
            }

            strokes.AddRange(sibship.Young.Select(y => new ChartStroke(StrokeUse.Descent, [new(y.To.X, sibship.LineY), Spot(y.To)])));
        }

        strokes.AddRange(chart.Matings.Select(m => new ChartStroke(StrokeUse.Mating, Spots(m.Path), m.IsBetweenKin, m.IsPossible)));
        return strokes;
    }

    private static ChartSpot[] Spots(IReadOnlyList<ChartPoint> points) => [.. points.Select(Spot)];

    private static ChartSpot Spot(ChartPoint point) => new(point.X, point.Y);
}
