using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Proofs.Modes;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Proofs;

/// <summary>Reads from a pedigree file what each animal shows of one trait, or of two, by the words in <c>seen</c>.</summary>
/// <remarks>The trait need not be in the catalogue: its word is looked for, whole, and <c>super</c> before it. What was told counts for nothing.</remarks>
internal static class TraitPedigreeReader
{
    public static async Task<Answer<TraitPedigree>> ReadAsync(NamedFile file, string trait, string? other, CancellationToken cancel)
    {
        var read = await PedigreeFile.ReadAsync((_, _) => null, file, cancel);
        if (read.Value is not { } pedigree)
        {
            return read.Problems.ToArray();
        }

        var ids = pedigree.Animals.Select(a => a.AnimalId).ToHashSet();
        var animals = pedigree.Animals.Select(a => Of(a, ids, pedigree.SireWeights, Words(trait), other is null ? null : Words(other))).ToArray();
        if (animals.All(a => a.Look is not (TraitLook.Shows or TraitLook.Super)))
        {
            return new AskedWrongly(file.Name, $"No animal shows '{trait}' in the column seen. Write the word as it stands there.");
        }

        return other is not null && animals.All(a => a.OtherLook == TraitLook.Normal)
            ? new AskedWrongly(file.Name, $"No animal shows '{other}' in the column seen. Write the word as it stands there.")
            : new TraitPedigree(animals);
    }

    private static TraitAnimal Of(Animal animal, HashSet<AnimalId> ids, SireChances weights, string[] trait, string[]? other)
    {
        var seen = animal.Statements.Where(s => s.Kind == StatementKind.Seen).Select(s => Words(s.Text)).ToArray();
        AnimalId[] possible = [.. animal.PossibleSireIds.Where(ids.Contains)];
        var wasLookedAt = seen.Length > 0 || animal.Statements.Any(s => s.Kind == StatementKind.LookedAtNormal);
        return new(Key(animal.AnimalId), animal.Sex, wasLookedAt ? Look(seen, trait) : null)
        {
            Sire = Known(animal.SireId),
            Dam = Known(animal.DamId),
            PossibleSires = [.. possible.Select(Key)],
            SireWeights = weights.Of(animal.AnimalId, possible),
            Clutch = animal.ClutchDate(),
            OtherLook = other is null ? TraitLook.Normal : Look(seen, other),
        };

        string? Known(AnimalId? id) => id is { } known && ids.Contains(known) ? Key(known) : null;
    }

    private static TraitLook Look(string[][] seen, string[] trait)
    {
        foreach (var words in seen)
        {
            for (var at = 0; at + trait.Length <= words.Length; at++)
            {
                if (words.AsSpan(at, trait.Length).SequenceEqual(trait))
                {
                    return at > 0 && words[at - 1] == "super" ? TraitLook.Super : TraitLook.Shows;
                }
            }
        }

        return TraitLook.Normal;
    }

    private static string[] Words(string text) =>
        new string([.. text.ToLowerInvariant().Select(c => char.IsLetterOrDigit(c) ? c : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static string Key(AnimalId id) => id.Value.ToString("N");
}

/// <summary>The animals of a file with what they show.</summary>
/// <param name="Animals">In the order of the file.</param>
internal sealed record TraitPedigree(IReadOnlyList<TraitAnimal> Animals);
