namespace Clutchwright.Genetics.Loci;

/// <summary>The stages of life at which a look is described, youngest first.</summary>
public enum AgeStage
{
    /// <summary>From the egg to the first months; hatch day is its first day.</summary>
    Hatchling = 0,

    /// <summary>The rest of the first year.</summary>
    Juvenile = 1,

    /// <summary>Growing, not yet of breeding age.</summary>
    Subadult = 2,

    /// <summary>Grown.</summary>
    Adult = 3,
}
