using Clutchwright.Sheets.Codes;
using Clutchwright.Sheets.Texts;

namespace Clutchwright.Sheets.Drawings;

/// <summary>Something drawn on a page. Places and sizes are points from the upper left corner; shades run from 0, black, to 1, white.</summary>
public abstract record Mark
{
    private Mark()
    {
    }

    /// <summary>The same at another place.</summary>
    public abstract Mark Moved(double right, double down);

    /// <summary>A text on one line.</summary>
    /// <param name="X">Where it begins.</param>
    /// <param name="Baseline">The line it stands on.</param>
    /// <param name="Size">The font size.</param>
    /// <param name="Style">How it is set.</param>
    /// <param name="Words">The text.</param>
    /// <param name="Shade">Its shade.</param>
    public sealed record Text(double X, double Baseline, double Size, TextStyle Style, string Words, double Shade = 0.0) : Mark
    {
        /// <inheritdoc/>
        public override Mark Moved(double right, double down) => this with { X = X + right, Baseline = Baseline + down };
    }

    /// <summary>Straight and curved lines, drawn, filled or both.</summary>
    /// <param name="Steps">From step to step.</param>
    public sealed record Path(IReadOnlyList<PathStep> Steps) : Mark
    {
        /// <summary>Gets the shade of the line; <c>null</c>: there is none.</summary>
        public double? Stroke { get; init; }

        /// <summary>Gets how thick the line is.</summary>
        public double Thickness { get; init; } = 0.75;

        /// <summary>Gets the lengths of dash and gap; <c>null</c>: the line is whole.</summary>
        public (double Dash, double Gap)? Dashes { get; init; }

        /// <summary>Gets whether dashes have round ends.</summary>
        public bool IsRound { get; init; }

        /// <summary>Gets the shade of the inside; <c>null</c>: it is not filled.</summary>
        public double? Fill { get; init; }

        /// <inheritdoc/>
        public override Mark Moved(double right, double down) => this with { Steps = [.. Steps.Select(s => s.Moved(right, down))] };

        /// <summary>The same, larger or smaller.</summary>
        public Path Scaled(double by) => this with
        {
            Steps = [.. Steps.Select(s => s.Scaled(by))],
            Thickness = Thickness * by,
            Dashes = Dashes is var (dash, gap) ? (dash * by, gap * by) : null,
        };
    }

    /// <summary>A QR code.</summary>
    /// <param name="X">The left end of its modules.</param>
    /// <param name="Y">The upper end of its modules.</param>
    /// <param name="Module">How wide a module is.</param>
    /// <param name="Matrix">The modules.</param>
    public sealed record Code(double X, double Y, double Module, QrMatrix Matrix) : Mark
    {
        /// <inheritdoc/>
        public override Mark Moved(double right, double down) => this with { X = X + right, Y = Y + down };
    }

    /// <summary>A photo.</summary>
    /// <param name="X">Its left end.</param>
    /// <param name="Y">Its upper end.</param>
    /// <param name="Width">How wide it is drawn.</param>
    /// <param name="Height">How high it is drawn.</param>
    /// <param name="Jpeg">The picture, as a JPEG file.</param>
    public sealed record Photo(double X, double Y, double Width, double Height, ReadOnlyMemory<byte> Jpeg) : Mark
    {
        /// <inheritdoc/>
        public override Mark Moved(double right, double down) => this with { X = X + right, Y = Y + down };
    }
}

/// <summary>What a step of a path does.</summary>
public enum PathMove
{
    /// <summary>Begins a figure.</summary>
    Start = 1,

    /// <summary>A straight line.</summary>
    Line = 2,

    /// <summary>A Bézier curve.</summary>
    Curve = 3,

    /// <summary>Back to where the figure began.</summary>
    Close = 4,
}

/// <summary>A step of a path.</summary>
/// <param name="Move">What it does.</param>
/// <param name="X">Where it leads.</param>
/// <param name="Y">Where it leads.</param>
public readonly record struct PathStep(PathMove Move, double X = 0, double Y = 0)
{
    /// <summary>Gets the first control point of a curve.</summary>
    public (double X, double Y) First { get; init; }

    /// <summary>Gets the second control point of a curve.</summary>
    public (double X, double Y) Second { get; init; }

    internal PathStep Moved(double right, double down) => this with
    {
        X = X + right, Y = Y + down, First = (First.X + right, First.Y + down), Second = (Second.X + right, Second.Y + down),
    };

    internal PathStep Scaled(double by) => this with { X = X * by, Y = Y * by, First = (First.X * by, First.Y * by), Second = (Second.X * by, Second.Y * by) };
}
