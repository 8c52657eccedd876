namespace Clutchwright.Planning.Schemes;

/// <summary>Where a scheme may cross a plant with itself.</summary>
public enum Selfing
{
    /// <summary>Only in the last step, which makes the wanted genotype.</summary>
    LastStep = 1,

    /// <summary>In any step.</summary>
    AnyStep = 2,
}
