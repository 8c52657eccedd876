using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Hets;

namespace Clutchwright.Desk.Proofs;

/// <summary>Reads what a test mate is: <c>visual</c>, <c>het</c>, or a possible het.</summary>
internal static class MateReader
{
    public static TestMate? Read(HetMateQuestion asked, string number, List<AskedWrongly> problems)
    {
        foreach (var (where, count) in new[] { ("normals", asked.Normals), ("visuals", asked.Visuals) })
        {
            if (count is < 0 or > HetProof.MostYoung)
            {
                problems.Add(new(where + number, $"{count} is no number of young. Write 0 to {HetProof.MostYoung}."));
                return null;
            }
        }

        if (Kind(asked.Mate) is not { } kind)
        {
            problems.Add(new("mate" + number, $"'{asked.Mate}' is no mate for a het proof. Write visual, het, or a possible het such as 66% het."));
            return null;
        }

        if (asked.Prior is null)
        {
            return Make(kind, asked.Normals, asked.Visuals);
        }

        if (kind.IsVisual)
        {
            problems.Add(new("mate-prior" + number, "A visual carries for certain, so there is no chance to give. Leave it out."));
            return null;
        }

        return ChanceReader.Read("mate-prior" + number, asked.Prior, problems) is { } carries ? Make((false, carries), asked.Normals, asked.Visuals) : null;
    }

    /// <summary>Whether a mate is a visual, and the chance that it carries; <c>null</c> where the text is no mate.</summary>
    public static (bool IsVisual, Probability Carries)? Kind(string text)
    {
        var words = text.Trim().ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words switch
        {
            ["visual"] => (true, Probability.Certain),
            ["het"] => (false, Probability.Certain),
            ["possible" or "poss", "het"] => (false, Probability.Half),
            [var chance, "het"] when ChanceReader.Read(chance) is { } carries => (false, carries),
            [var chance, "possible" or "poss", "het"] when ChanceReader.Read(chance) is { } carries => (false, carries),
            _ => null,
        };
    }

    public static string Words(TestMate mate) => mate switch
    {
        { IsVisual: true } => "visual",
        { Carries.IsCertain: true } => "het",
        _ => $"possible het, {OddsText.RatioAndPercent(mate.Carries)}",
    };

    private static TestMate Make((bool IsVisual, Probability Carries) kind, int normals, int visuals) => kind.IsVisual
        ? TestMate.Visual(normals, visuals)
        : TestMate.PossibleHet(kind.Carries, normals, visuals);
}
