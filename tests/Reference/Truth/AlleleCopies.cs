namespace Clutchwright.Reference.Tests.Truth;

/// <summary>How likely an animal has two, one or no copy of an allele; a hemizygous animal with it has one.</summary>
internal readonly record struct AlleleCopies(double Two, double One, double None)
{
    /// <summary>The largest difference between two of these.</summary>
    public double DistanceTo(AlleleCopies other) =>
        Math.Max(Math.Abs(Two - other.Two), Math.Max(Math.Abs(One - other.One), Math.Abs(None - other.None)));
}
