using Clutchwright.Catalogue.Entries;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Opened;

/// <summary>From when on an animal breeds, by the youngest age of its species' biology.</summary>
internal static class BreedingAge
{
    /// <summary>The youngest age at which a sex breeds, in months; null: the species' biology does not say.</summary>
    public static double? Least(Biology biology, Sex sex) =>
        (sex == Sex.Male ? biology.MaleBreedingAgeMonths : biology.FemaleBreedingAgeMonths) is { } age ? age.Least ?? age.Mean : null;

    /// <summary>The first day on which it is not surely too young; null: nothing says that it is.</summary>
    public static DateOnly? Reached(Biology biology, Animal animal, Sex sex) =>
        Least(biology, sex) is { } months && animal.Hatched is { } hatched ? hatched.Earliest.AddMonths((int)Math.Ceiling(months)) : null;
}
