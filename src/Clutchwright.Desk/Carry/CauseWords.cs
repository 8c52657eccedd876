using Clutchwright.Desk.Opened;
using Clutchwright.Pedigrees.Beliefs.Contradictions;

namespace Clutchwright.Desk.Carry;

/// <summary>Puts causes of a contradiction, and what to check, into sentences.</summary>
internal sealed class CauseWords(OpenCatalogue catalogue, StockRecord record)
{
    private const int MostNamed = 4;

    public string Text(ClashCause cause) => Text(cause.Kind, cause.Animal, cause.Clutch, cause.Other);

    public string Text(UnweighedCause cause) => Text(cause.Kind, cause.Animal, cause.Clutch, cause.Other);

    private string Text(CauseKind kind, string animal, IReadOnlyList<string> clutch, string? other) => kind switch
    {
        CauseKind.Misread => $"{Tag(animal)} was misread or entered wrongly.",
        CauseKind.WrongWords => $"What was said of {Tag(animal)} is not so.",
        CauseKind.UnknownSire => $"{Clutch(clutch)} has a sire that is not recorded.",
        CauseKind.OtherSire => $"{Clutch(clutch)} is of {Tag(other!)}.",
        CauseKind.StoredSperm => $"{Clutch(clutch)} is of sperm kept from {Tag(other!)}, the sire of an earlier clutch.",
        CauseKind.Parthenogenesis => $"{Clutch(clutch)} is of the dam alone.",
        CauseKind.Swapped => $"{Tag(animal)} and {Tag(other!)} were taken for each other as hatchlings.",
        CauseKind.UnknownOrigin => $"{Tag(animal)} is of other parents than recorded.",
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

    private string Clutch(IReadOnlyList<string> clutch)
    {
        var named = clutch.Take(MostNamed).Select(Tag).ToArray();
        var more = clutch.Count - named.Length;
        return clutch.Count == 1 ? named[0] : $"The clutch {string.Join(", ", named)}{(more > 0 ? $" and {more:N0} more" : string.Empty)}";
    }
}
