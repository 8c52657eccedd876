namespace Clutchwright.Planning.Routes;

/// <summary>How a route went in many tries.</summary>
/// <param name="Tries">How many tries.</param>
/// <param name="ChanceBySeason">The share of tries in which what is wanted had hatched by the end of each season; index 0 is 0.</param>
/// <param name="StandardErrors">The standard error of each share.</param>
/// <param name="Clutches">Clutches laid until success or the end of the horizon.</param>
/// <param name="Raised">Animals held back until then.</param>
/// <param name="Cost">What it cost until then, in the keeper's unit.</param>
/// <param name="StuckAt">For each step of the route followed, the share of failed tries that were waiting for it at the end; of several the first.</param>
public sealed record RouteOutlook(
    int Tries,
    IReadOnlyList<double> ChanceBySeason,
    IReadOnlyList<double> StandardErrors,
    SpreadOfTries Clutches,
    SpreadOfTries Raised,
    SpreadOfTries Cost,
    IReadOnlyList<double> StuckAt)
{
    /// <summary>Gets the chance within the horizon.</summary>
    public double Chance => ChanceBySeason[^1];
}

/// <summary>How a number spread over many tries.</summary>
/// <param name="Mean">The mean.</param>
/// <param name="Low">A tenth of the tries had less.</param>
/// <param name="Middle">Half of the tries had less.</param>
/// <param name="High">A tenth of the tries had more.</param>
public sealed record SpreadOfTries(double Mean, double Low, double Middle, double High)
{
    internal static SpreadOfTries Of(double[] values)
    {
        var sorted = values.Order().ToArray();
        return new(values.Average(), At(0.1), At(0.5), At(0.9));

        double At(double share) => sorted[(int)Math.Min(sorted.Length - 1, Math.Floor(share * sorted.Length))];
    }
}
