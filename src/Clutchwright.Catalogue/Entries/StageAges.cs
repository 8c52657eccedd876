using Clutchwright.Genetics.Loci;

namespace Clutchwright.Catalogue.Entries;

/// <summary>The ages at which the stages of life begin, in months.</summary>
/// <param name="Juvenile">More than 0, which is where the hatchling begins.</param>
/// <param name="Subadult">More than <paramref name="Juvenile"/>.</param>
/// <param name="Adult">More than <paramref name="Subadult"/>.</param>
public sealed record StageAges(double Juvenile, double Subadult, double Adult)
{
    /// <summary>The age in months at which a stage begins.</summary>
    public double BeginsAt(AgeStage stage) => stage switch
    {
        AgeStage.Hatchling => 0.0,
        AgeStage.Juvenile => Juvenile,
        AgeStage.Subadult => Subadult,
        AgeStage.Adult => Adult,
    };

    /// <summary>The stage an animal of an age in months is in.</summary>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="months"/> is negative or NaN.</exception>
    public AgeStage StageAt(double months) => months switch
    {
        >= 0.0 when months >= Adult => AgeStage.Adult,
        >= 0.0 when months >= Subadult => AgeStage.Subadult,
        >= 0.0 when months >= Juvenile => AgeStage.Juvenile,
        >= 0.0 => AgeStage.Hatchling,
        _ => throw new ArgumentOutOfRangeException(nameof(months), months, "An age is not negative."),
    };
}
