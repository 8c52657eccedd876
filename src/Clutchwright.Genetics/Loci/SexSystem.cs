namespace Clutchwright.Genetics.Loci;

/// <summary>Which sex carries two different sex chromosomes.</summary>
public enum SexSystem
{
    /// <summary>Males carry X and Y, females two X.</summary>
    XY = 1,

    /// <summary>Females carry Z and W, males two Z.</summary>
    ZW = 2,
}

/// <summary>The words of a sex system.</summary>
public static class SexSystemExtensions
{
    /// <summary>The sex with two different sex chromosomes: male in XY, female in ZW.</summary>
    public static Sex Heterogametic(this SexSystem system) => system == SexSystem.XY ? Sex.Male : Sex.Female;

    /// <summary>The chromosome both sexes carry: <c>X</c> or <c>Z</c>.</summary>
    public static string Shared(this SexSystem system) => system == SexSystem.XY ? "X" : "Z";

    /// <summary>The chromosome that only one sex carries: <c>Y</c> or <c>W</c>.</summary>
    public static string Unshared(this SexSystem system) => system == SexSystem.XY ? "Y" : "W";

    /// <summary>The other sex.</summary>
    public static Sex Opposite(this Sex sex) => sex == Sex.Male ? Sex.Female : Sex.Male;
}
