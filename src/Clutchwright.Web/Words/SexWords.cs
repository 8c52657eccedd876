using Clutchwright.Genetics.Loci;

namespace Clutchwright.Web.Words;

/// <summary>Puts a sex into the trade's and into plain words.</summary>
internal static class SexWords
{
    /// <summary>Males, females, unsexed.</summary>
    public static string Trade(Sex? sex) => sex switch
    {
        Sex.Male => "1.0",
        Sex.Female => "0.1",
        _ => "0.0.1",
    };

    public static string Plain(Sex? sex) => sex switch
    {
        Sex.Male => "male",
        Sex.Female => "female",
        _ => "unsexed",
    };

    /// <summary>Of outcomes: <c>null</c> stands for either.</summary>
    public static string? Many(Sex? sex) => sex switch
    {
        Sex.Male => "males",
        Sex.Female => "females",
        _ => null,
    };

    /// <summary>From a form or an address; <c>null</c> where it names no sex.</summary>
    public static Sex? FromLetter(string? letter) => letter switch
    {
        "m" => Sex.Male,
        "f" => Sex.Female,
        _ => null,
    };

    /// <summary>A count as the trade writes it.</summary>
    public static string Count(int males, int females, int unsexed) => unsexed == 0 ? $"{males}.{females}" : $"{males}.{females}.{unsexed}";
}
