using Clutchwright.Genetics.Clutches;
using Clutchwright.Genetics.Dangers;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Genetics.Crosses;

/// <summary>What can hatch from a mating, with exact odds.</summary>
/// <remarks>
/// Kept as independent factors, one a linkage group (or a few, where a doubt of the parents or a rule of survival ties them), and never
/// multiplied out: looks and genotypes come best first and lazily, chances of wants are computed on the factors. All chances are of
/// eggs that would hatch if only their genotype let them, unless a name says otherwise. Immutable, and safe to use from many threads.
/// </remarks>
public sealed class Cross
{
    private Cross(Mating mating, IReadOnlyList<CrossBlock> blocks)
    {
        Mating = mating;
        Blocks = blocks;
        Survival = blocks.Where(b => !b.Lives).Aggregate(
            Probability.Certain,
            (product, b) => product * b.Hatched.Aggregate(Probability.Impossible, (sum, p) => sum + p));
        IsBySex = blocks.Any(b => b.HasSex && (b.Loci.Any(l => l.Group.IsSex) || !b.Lives));
    }

    /// <summary>Gets the mating.</summary>
    public Mating Mating { get; }

    /// <summary>Gets the share of eggs whose genotype lets them become a live hatchling.</summary>
    public Probability Survival { get; }

    /// <summary>Gets whether looks and genotypes are told apart by sex: where an allele on the sex chromosomes or a
    /// sex-limited loss is in play.</summary>
    public bool IsBySex { get; }

    internal IReadOnlyList<CrossBlock> Blocks { get; }

    /// <summary>Works out the factors of a mating.</summary>
    /// <remarks>Cost: for each linkage group in play, the number of cases of the parents times their gametes' product.</remarks>
    public static Cross Of(Mating mating)
    {
        // A loss after hatching changes no figure of a cross, so it ties no blocks together.
        var rules = mating.Species.Dangers.Where(d => !d.Viability.ToHatchling.IsCertain).ToArray();
        var parts = mating.Blocks.Select(b => new List<MatingBlock> { b }).ToList();
        var acting = new List<Danger>();
        foreach (var rule in rules)
        {
            // Only blocks that a rule reaches into must be kept together, and only if every one of its conditions can come true.
            var reached = parts
                .Where(p => rule.Sites.Any(s => p.Exists(b => b.Groups.Contains(s.Locus.Group)))
                    || (rule.Sex is not null && p.Exists(b => b.Groups.Any(g => g.IsSex))))
                .ToArray();
            if (!rule.Sites.All(s => Array.Exists(reached, p => p.Exists(b => b.Groups.Contains(s.Locus.Group) && CanHold(mating, b, rule)))))
            {
                continue;
            }

            acting.Add(rule);
            foreach (var other in reached.Skip(1))
            {
                reached[0].AddRange(other);
                parts.Remove(other);
            }
        }

        return new(mating, parts.Select(p => CrossBlock.Of(mating, p, acting)).ToArray());
    }

    /// <summary>Lists the looks that can hatch, likeliest first, lazily: what can be told apart by eye at a stage of life.</summary>
    /// <param name="stage">The stage; hatch day is the first day of <see cref="AgeStage.Hatchling"/>.</param>
    /// <remarks>Hidden forms are put together with what they are hidden beside. The chances of all looks sum to <see cref="Survival"/>.</remarks>
    public IEnumerable<LookOutcome> Looks(AgeStage stage = AgeStage.Hatchling) => LookListing.Of(this, stage);

    /// <summary>Lists the genotypes that can be laid, likeliest first, lazily.</summary>
    /// <remarks>Their chances sum to 1, those that do not live included.</remarks>
    public IEnumerable<GenotypeOutcome> Genotypes() => GenotypeListing.Of(this);

    /// <summary>The chance that an egg is wanted and lives.</summary>
    public Probability ChanceOf(Want want) => WantReckoner.PerEgg(this, want);

    /// <summary>The chance that an egg is wanted and lives, as it depends on what the parents are: the doubt that all eggs of a
    /// pair share.</summary>
    public SharedChance SharedChanceOf(Want want) => WantReckoner.Shared(this, want);

    /// <summary>The chance that an egg has the genotype of a danger, whether it lives or not.</summary>
    public Probability ChanceOf(Danger danger)
    {
        var product = Probability.Certain;
        var met = 0;
        foreach (var block in Blocks)
        {
            var concerned = danger.Sites.Count(s => block.Covers(s.Locus.Group));
            if (concerned == 0 && !(block.HasSex && danger.Sex is not null))
            {
                continue;
            }

            met += concerned;
            var sites = new CrossBlockSites(block.Groups);
            var sum = Probability.Impossible;
            for (var s = 0; s < block.States.Count; s++)
            {
                if (sites.Holds(danger, block.States[s]))
                {
                    sum += block.Laid[s];
                }
            }

            product *= sum;
        }

        // A site outside every block is wild in every egg.
        return met == danger.Sites.Count || danger.Sites.All(s => Blocks.Any(b => b.Covers(s.Locus.Group)) || s.Pairs[0, 0])
            ? product
            : Probability.Impossible;
    }

    private static bool CanHold(Mating mating, MatingBlock block, Danger rule)
    {
        var sites = new CrossBlockSites(block.Groups);
        return block.Cases.Any(c => ChildStates.Of(mating, block.Groups, c).Any(s => sites.Holds(rule, s.Value)));
    }
}
