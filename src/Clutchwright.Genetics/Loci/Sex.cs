namespace Clutchwright.Genetics.Loci;

/// <summary>The sex of an animal. There is no zero, so that <c>default</c> is never a real sex; an animal whose sex
/// is not known has a <c>null</c> <see cref="Sex"/>.</summary>
public enum Sex
{
    /// <summary>Written 0.1 by the trade.</summary>
    Female = 1,

    /// <summary>Written 1.0 by the trade.</summary>
    Male = 2,
}
