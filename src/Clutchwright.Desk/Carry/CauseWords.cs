using Clutchwright.Desk.Opened;
using Clutchwright.Pedigrees.Beliefs.Contradictions;

namespace Clutchwright.Desk.Carry;

/// <summary>Puts causes of a contradiction, and what to check, into sentences.</summary>
internal sealed class CauseWords(OpenCatalogue catalogue, StockRecord record)
{
    private const int MostNamed = 4;

    public string Text(ClashCause cause) => cause.Kind switch
    {
        CauseKind.Misread => $"{Tag(cause.Animal)} was misread or entered wrongly.",
        CauseKind.WrongWords => $"What was said of {Tag(cause.Animal)} is not so.",
        CauseKind.UnknownSire => $"{Clutch(cause)} has a sire that is not recorded.",
        CauseKind.OtherSire => $"{Clutch(cause)} is of {Tag(cause.Other!)}.",
        CauseKind.StoredSperm => $"{Clutch(cause)} is of sperm kept from {Tag(cause.Other!)}, the sire of an earlier clutch.",
        CauseKind.Parthenogenesis => $"{Clutch(cause)} is of the dam alone.",
        CauseKind.Swapped => $"{Tag(cause.Animal)} and {Tag(cause.Other!)} were taken for each other as hatchlings.",
        CauseKind.UnknownOrigin => $"{Tag(cause.Animal)} is of other parents than recorded.",
    };

    public string Check(ClashCause cause) => cause.Kind switch
    {
        CauseKind.Misread => $"Look at {Tag(cause.Animal)} again, or at its photos.",
        CauseKind.WrongWords => "Ask the seller for the parents' record, or test a shed.",
        CauseKind.UnknownSire => "Ask whether the dam was with a male before she came, or who else she was with.",
        CauseKind.OtherSire => $"See in the pairing notes whether {Tag(cause.Other!)} was with the dam.",
        CauseKind.StoredSperm => $"See when the dam was last with {Tag(cause.Other!)}.",
        CauseKind.Parthenogenesis => $"Sex the young: all would be {(catalogue.Species.SexSystem == Genetics.Loci.SexSystem.XY ? "female" : "male")}. Few of such a clutch hatch.",
        CauseKind.Swapped => $"Compare the tub labels and hatch photos of {Tag(cause.Animal)} and {Tag(cause.Other!)}.",
        CauseKind.UnknownOrigin => $"See where {Tag(cause.Animal)} was entered from.",
    };

    private string Tag(string key) => record[key].Animal.Tag;

    private string Clutch(ClashCause cause)
    {
        var named = cause.Clutch.Take(MostNamed).Select(Tag).ToArray();
        var more = cause.Clutch.Count - named.Length;
        return cause.Clutch.Count == 1 ? named[0] : $"The clutch {string.Join(", ", named)}{(more > 0 ? $" and {more:N0} more" : string.Empty)}";
    }
}
