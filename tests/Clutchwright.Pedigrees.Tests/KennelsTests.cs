using System.Security.Cryptography;
using System.Text;
using Clutchwright.Testing.Pedigrees;
using Xunit;

namespace Clutchwright.Pedigrees.Tests;

/// <summary>The generated pedigrees are those that other programs' times and results were measured on.</summary>
public sealed class KennelsTests
{
    [Theory]
    [InlineData("kennel", 1_000, "0f27ebd9512211f5ecbfc8c59f2de5b8")]
    [InlineData("kennel", 10_000, "35cc62b21385b1581719aa5c21a5b63a")]
    [InlineData("kennel", 100_000, "8b4bfc324e1cde28bf4bb50c8821cec2")]
    [InlineData("kennel", 1_000_000, "0c80b35470bbffac83311bc994202ddf")]
    [InlineData("shallow", 10_000, "54bcf768b13d0d970e0bbd89398ac659")]
    [InlineData("shallow", 1_000_000, "cf3cb190f2cb0e53fa3f94a721f51d14")]
    [InlineData("random", 10_000, "af0973492f6a1ce868dfd8d683ad5f4e")]
    public void Kennel_SeedOne_HasThePublishedDigest(string kind, int animals, string md5)
    {
        var pedigree = kind switch
        {
            "kennel" => Kennels.Kennel(animals),
            "shallow" => Kennels.Shallow(animals),
            _ => Kennels.RandomMating(animals),
        };

#pragma warning disable CA5351 // The published digests are MD5; nothing is kept secret by them.
        Assert.Equal(md5, Convert.ToHexStringLower(MD5.HashData(Encoding.ASCII.GetBytes(pedigree.ToNumberTable()))));
#pragma warning restore CA5351
    }

    /// <summary>The ranges over seeds 1 to 3 that the widths of the season generator were published with.</summary>
    [Theory]
    [InlineData(10, 10, 3, 620, 670, 62, 71)]
    [InlineData(20, 10, 3, 1_230, 1_280, 128, 131)]
    [InlineData(10, 20, 5, 1_230, 1_270, 119, 122)]
    [InlineData(20, 20, 5, 2_440, 2_490, 235, 241)]
    [InlineData(10, 50, 8, 3_040, 3_120, 267, 282)]
    [InlineData(20, 50, 8, 6_020, 6_130, 481, 518)]
    public void Seasons_SeedsOneToThree_HaveThePublishedSizes(
        int seasons, int females, int males, int fewest, int most, int fewestBreeders, int mostBreeders)
    {
        var pedigrees = new ulong[] { 1, 2, 3 }.Select(seed => Kennels.Seasons(seasons, females, males, seed)).ToArray();

        // The published animal counts are rounded to tens.
        Assert.InRange(pedigrees.Min(p => p.Count), fewest - 5, fewest + 5);
        Assert.InRange(pedigrees.Max(p => p.Count), most - 5, most + 5);
        Assert.Equal((fewestBreeders, mostBreeders), (pedigrees.Min(p => p.Breeders.Count), pedigrees.Max(p => p.Breeders.Count)));
    }
}
