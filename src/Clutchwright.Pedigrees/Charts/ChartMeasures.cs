namespace Clutchwright.Pedigrees.Charts;

/// <summary>The sizes a chart is drawn with, all in one unit of the caller's choice (the app uses CSS pixels).</summary>
public sealed record ChartMeasures
{
    /// <summary>Gets the width and height of a symbol.</summary>
    public double Symbol { get; init; } = 28;

    /// <summary>Gets the room for the label of an animal; no label is wider.</summary>
    public double LabelWidth { get; init; } = 92;

    /// <summary>Gets the space between two labels; the lines from a pair down to its young run in it.</summary>
    public double Gap { get; init; } = 18;

    /// <summary>Gets the distance of two lines that run side by side.</summary>
    public double Track { get; init; } = 9;

    /// <summary>Gets the space from the labels of a row to the first sibship line below it, and from the last one to the next symbols.</summary>
    public double Air { get; init; } = 14;

    /// <summary>Gets the empty edge around the chart.</summary>
    public double Margin { get; init; } = 24;
}
