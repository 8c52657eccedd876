using Clutchwright.Sheets.Drawings;
using Clutchwright.Sheets.Papers;

namespace Clutchwright.Sheets.Labels;

/// <summary>How labels lie on a page, in millimetres.</summary>
/// <param name="Paper">The page.</param>
/// <param name="WidthMm">The width of a label.</param>
/// <param name="HeightMm">The height of a label.</param>
/// <param name="Columns">Labels side by side.</param>
/// <param name="Rows">Labels below one another.</param>
public sealed record LabelGrid(PaperSize Paper, double WidthMm, double HeightMm, int Columns, int Rows)
{
    /// <summary>Gets the room left of the first label.</summary>
    public double LeftMm { get; init; }

    /// <summary>Gets the room above the first label.</summary>
    public double TopMm { get; init; }

    /// <summary>Gets the gap between labels side by side.</summary>
    public double AcrossMm { get; init; }

    /// <summary>Gets the gap between labels below one another.</summary>
    public double DownMm { get; init; }

    /// <summary>Gets how many labels a page has.</summary>
    public int Count => Columns * Rows;

    /// <summary>Gets whether each label is a page of its own.</summary>
    public bool IsRoll => Paper == new PaperSize(WidthMm, HeightMm);

    /// <summary>Gets whether all labels lie on the page.</summary>
    public bool Fits =>
        LeftMm + (Columns * WidthMm) + ((Columns - 1) * AcrossMm) <= Paper.WidthMm + 1e-6
        && TopMm + (Rows * HeightMm) + ((Rows - 1) * DownMm) <= Paper.HeightMm + 1e-6;

    /// <summary>A roll of labels, one a page.</summary>
    public static LabelGrid Roll(double widthMm, double heightMm) => new(new(widthMm, heightMm), widthMm, heightMm, 1, 1);

    /// <summary>Where a label lies.</summary>
    /// <param name="position">Its place, from 0, row by row.</param>
    public (double XMm, double YMm) At(int position) => (
        LeftMm + ((position % Columns) * (WidthMm + AcrossMm)),
        TopMm + ((position / Columns % Rows) * (HeightMm + DownMm)));

    /// <summary>Lays labels on pages.</summary>
    /// <param name="labels">The labels, of this grid's size.</param>
    /// <param name="first">The place of the first on the first page, from 0.</param>
    /// <param name="withOutlines">Whether fine lines show where the labels end.</param>
    public IReadOnlyList<PlacedPage> Lay(IReadOnlyList<PlacedLabel> labels, int first = 0, bool withOutlines = false)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(first, Count);
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        return [.. labels
            .Select((label, i) => (Label: label, Place: first + i))
            .GroupBy(l => l.Place / Count)
            .Select(page => new PlacedPage(Paper, [.. page.SelectMany(l => Parts(l.Label, l.Place % Count, withOutlines))]))];
    }

    private IEnumerable<PlacedPart> Parts(PlacedLabel label, int place, bool withOutline)
    {
        const double P = PaperSize.PointsPerMm;
        var (left, top) = At(place);
        if (withOutline && !IsRoll)
        {
            yield return new(PartKind.Ornament, [new Mark.Path(Paths.Box(left * P, top * P, WidthMm * P, HeightMm * P)) { Stroke = 0.75, Thickness = 0.3 }]);
        }

        yield return new(PartKind.Paragraph, [.. label.Texts.Select(t => new Mark.Text((left + t.XMm) * P, (top + t.BaselineMm) * P, t.Size, t.Style, t.Words))]);
        if (label.Code is { } code)
        {
            yield return new(PartKind.Figure, [new Mark.Code((left + label.CodeAtMm.X) * P, (top + label.CodeAtMm.Y) * P, label.ModuleMm * P, code)])
            {
                Words = $"QR code of {label.Tag}",
            };
        }
    }
}
