using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Reference.Tests.R;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Kinship;

/// <summary>Kinship and inbreeding of whole kennels against R's tabular method.</summary>
public sealed class KinshipByRTests
{
    private const double Tolerance = 1e-12;

    /// <summary>Gets kennels by what they are.</summary>
    public static TheoryData<string> Kinds => ["kennel", "shallow", "random", "seasons"];

    [Theory]
    [MemberData(nameof(Kinds))]
    public async Task Matrix_OfAKennel_IsRs(string kind)
    {
        var family = kind switch
        {
            "kennel" => Kennels.Kennel(1000),
            "shallow" => Kennels.Shallow(1000),
            "random" => Kennels.RandomMating(1000),
            _ => Kennels.Seasons(10, 20, 5, 1),
        };
        var all = Enumerable.Range(0, family.Count).ToArray();

        var reckoner = KinshipReckoner.Of(Descent.Of(family.ToPedigree()));
        var matrix = reckoner.Matrix(all);

        var expected = await KinshipByR.OfAsync(family);
        foreach (var i in all)
        {
            Near.Check(expected.Inbreeding(i), reckoner.Inbreeding[i], Tolerance, $"inbreeding of {i + 1}");
            foreach (var j in all.Where(j => Math.Abs(expected[i, j] - matrix[i, j]) > Tolerance))
            {
                Assert.Fail($"kinship of {i + 1} and {j + 1}: {matrix[i, j]}, by R {expected[i, j]}");
            }
        }

        // Single pairs and tables take other ways to the same number.
        var random = new SplitMix64(8);
        int[] rows = [.. Enumerable.Range(0, 20).Select(_ => random.Below(family.Count))];
        int[] columns = [.. Enumerable.Range(0, 30).Select(_ => random.Below(family.Count))];
        var table = reckoner.Table(rows, columns);
        for (var r = 0; r < rows.Length; r++)
        {
            for (var c = 0; c < columns.Length; c++)
            {
                Near.Check(expected[rows[r], columns[c]], table[r, c], Tolerance, $"kinship of {rows[r] + 1} and {columns[c] + 1} in a table");
            }

            Near.Check(expected[rows[r], columns[r]], reckoner.Between(rows[r], columns[r]), Tolerance, $"kinship of {rows[r] + 1} and {columns[r] + 1}");
        }
    }
}
