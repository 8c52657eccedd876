using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <summary>What a trade text says of one locus.</summary>
/// <param name="Locus">The locus.</param>
/// <param name="Pairs">The possible pairs of allele indices, the smaller first in each, likeliest pair first; weights sum to 1.</param>
public sealed record LocusClaim(Locus Locus, IReadOnlyList<Weighted<(int First, int Second)>> Pairs);

/// <summary>An animal as a trade text describes it.</summary>
public sealed class ReadAnimal
{
    private readonly Species _species;
    private readonly ParsedText _parsed;

    private ReadAnimal(Species species, ParsedText parsed, string text, Sex? sex, IReadOnlyList<LocusClaim> claims, IReadOnlyList<TextNote> notes)
    {
        _species = species;
        _parsed = parsed;
        Text = text;
        Sex = sex;
        Claims = claims;
        Notes = notes;
    }

    /// <summary>Gets the text.</summary>
    public string Text { get; }

    /// <summary>Gets the sex, told or following from a maker; <c>null</c>: neither.</summary>
    public Sex? Sex { get; }

    /// <summary>Gets what is said of each locus that the text names, in the species' order; all others are taken as wild.</summary>
    public IReadOnlyList<LocusClaim> Claims { get; }

    /// <summary>Gets how things were taken that the text leaves open.</summary>
    public IReadOnlyList<TextNote> Notes { get; }

    /// <summary>What the genotype may be, taking the animal to be of a sex.</summary>
    /// <param name="sex">The sex; where the text tells one it must be the same.</param>
    /// <returns>The belief, or a problem if the text contradicts that sex.</returns>
    public TextOutcome<GenotypeBelief> ToBelief(Sex sex) => ClaimReckoner.Reckon(_species, sex, _parsed, Text, []);

    /// <inheritdoc/>
    public override string ToString() => Text;

    internal static TextOutcome<ReadAnimal> From(Species species, ParsedText parsed, string text)
    {
        var two = species.SexSystem.Heterogametic();
        Sex[] tried = parsed.Sex is { } told ? [told] : [two.Opposite(), two];
        var sex = parsed.Sex;
        TextProblem? problem = null;
        GenotypeBelief? belief = null;
        var notes = new List<TextNote>(parsed.Notes);
        foreach (var each in tried)
        {
            var phases = new List<TextNote>();
            var outcome = ClaimReckoner.Reckon(species, each, parsed, text, phases);
            if (outcome.IsRead)
            {
                // Of two sexes that both fit, the notes are those of the one that leaves more open.
                belief = outcome.Value;
                notes = [.. parsed.Notes, .. phases];
            }

            problem = outcome.Problem;
            if (!outcome.IsRead && each != two && parsed.Sex is null)
            {
                sex = two; // no female has X and Y: what says that it has is a male
            }
        }

        if (belief is null || problem is not null)
        {
            return new(problem!);
        }

        if (sex is not null && parsed.Sex is null)
        {
            notes.Add(new(0, text.Length, $"Taken as a {(sex == Genetics.Loci.Sex.Male ? "male" : "female")}: only they can be what the text says."));
        }

        var named = parsed.Claims
            .SelectMany(c => c is Claim.Strand strand ? strand.Group.Loci : c.Locus is { } locus ? [locus] : [])
            .Distinct()
            .OrderBy(l => l.Index);
        var claims = named.Select(l => new LocusClaim(l, belief.PairsAt(l))).ToArray();
        return new(new ReadAnimal(species, parsed, text, sex, claims, notes.OrderBy(n => n.Position).ToArray()));
    }
}
