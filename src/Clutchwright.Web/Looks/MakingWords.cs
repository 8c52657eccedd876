using Clutchwright.Desk.Looks;
using Clutchwright.Desk.Words;

namespace Clutchwright.Web.Looks;

/// <summary>What is told of a making beside its colours.</summary>
internal static class MakingWords
{
    /// <summary>How surely its look is known.</summary>
    public static string Known(LookWords look)
    {
        var ground = look switch
        {
            { IsRecorded: true, Grade: { } grade } => grade,
            { IsRecorded: true } => "recorded",
            { Grade: { } grade } => $"put together from its parts, {grade}",
            _ => $"composed from {string.Join(" and ", look.ComposedOf)}",
        };
        return look.Varies switch
        {
            "much" => $"{ground}; varies much",
            "little" => $"{ground}; varies little",
            _ => ground,
        };
    }

    /// <summary>How near the stock is to it.</summary>
    public static string Season(Nearness nearness) => nearness switch
    {
        { Missing.Count: > 0 } => $"no {string.Join(", ", nearness.Missing)} in your stock",
        { BestChance: { } chance, BestPair: var (sire, dam) } => $"{OddsText.Percent(chance)} ({sire} × {dam})",
        { IsOnlyByLeftOutPairs: true } => "only by pairs that are left out",
        _ => "no pair yet",
    };
}
