namespace Clutchwright.Planning.Expectations;

/// <summary>What is known of an interval before the keeper's own records: from the species' biology.</summary>
/// <remarks>The logarithm of the days is normal with unknown mean and variance, which have a normal-inverse-gamma prior. Its two free figures are
/// set so that the prediction for a female of whom nothing is recorded has, in logarithms, exactly the mean and the standard deviation of a
/// log-normal interval with the ones stated. Source: docs/references.md [Murphy2007].</remarks>
public sealed record IntervalPrior
{
    /// <summary>Makes a prior.</summary>
    /// <param name="meanDays">The mean, in days; above 0.</param>
    /// <param name="sdDays">The standard deviation, in days; above 0.</param>
    /// <param name="weight">How many records it weighs as much as; above 2, since with fewer the spread has no mean.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not as said.</exception>
    public IntervalPrior(double meanDays, double sdDays, double weight)
    {
        (MeanDays, SdDays, Weight) = (Above(meanDays, 0.0, nameof(meanDays)), Above(sdDays, 0.0, nameof(sdDays)), Above(weight, 2.0, nameof(weight)));
        var variance = Math.Log(1.0 + (sdDays * sdDays / meanDays / meanDays));
        Middle = Math.Log(meanDays) - (variance / 2.0);
        Shape = weight / 2.0;
        Scale = variance * (Shape - 1.0) / (1.0 + (1.0 / weight));
    }

    /// <summary>Gets the mean, in days.</summary>
    public double MeanDays { get; }

    /// <summary>Gets the standard deviation, in days.</summary>
    public double SdDays { get; }

    /// <summary>Gets how many records it weighs as much as.</summary>
    public double Weight { get; }

    /// <summary>Where the mean of the logarithm lies.</summary>
    internal double Middle { get; }

    /// <summary>The shape of the inverse gamma distribution of its variance.</summary>
    internal double Shape { get; }

    /// <summary>The scale of that.</summary>
    internal double Scale { get; }

    private static double Above(double value, double least, string name) =>
        value > least && double.IsFinite(value) ? value : throw new ArgumentOutOfRangeException(name, value, $"It must be above {least} and finite.");
}
