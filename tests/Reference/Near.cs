namespace Clutchwright.Reference.Tests;

/// <summary>Comparison of numbers that two programs reckoned.</summary>
internal static class Near
{
    /// <summary>Asks that two numbers agree, in ratio or where both are small.</summary>
    /// <param name="expected">By the other program.</param>
    /// <param name="actual">By ours.</param>
    /// <param name="tolerance">The largest difference, in parts of the expected number if that is above 1, else as it is.</param>
    /// <param name="what">What it is about.</param>
    public static void Check(double expected, double actual, double tolerance, object what) => Assert.True(
        expected.Equals(actual) || Math.Abs(actual - expected) <= tolerance * Math.Max(1, Math.Abs(expected)),
        $"{what switch { int[][] rows => string.Join(" | ", rows.Select(r => string.Join(' ', r))), int[] row => string.Join(' ', row), _ => what }}: {actual}, by the other program {expected}");
}
