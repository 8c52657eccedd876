using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Entries;

/// <summary>A figure of a species' biology: one value, or a distribution with a mean and a standard deviation, perhaps cut off.</summary>
/// <param name="Mean">The value, or the mean before it is cut off; in the unit the figure's name says.</param>
/// <param name="Sd">The standard deviation, in the same unit; 0 for one value.</param>
/// <param name="Least">The smallest value possible; <c>null</c>: no limit stated.</param>
/// <param name="Most">The largest value possible; <c>null</c>: no limit stated.</param>
/// <param name="Evidence">On what grounds.</param>
public sealed record Spread(double Mean, double Sd, double? Least, double? Most, Evidence Evidence)
{
    /// <summary>Gets whether this is one value without a spread.</summary>
    public bool IsValue => Sd == 0.0;
}
