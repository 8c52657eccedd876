using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>A factor of a cross, its states put together by what they show at a stage of life when nothing hides it.</summary>
internal sealed class LookBlock
{
    public LookBlock(CrossBlock block, AgeStage stage, bool bySex)
    {
        Block = block;
        var classes = new List<LookClass>();
        foreach (var entry in block.Entries)
        {
            var seen = entry.Shown.Select(e => e.TellableFrom > stage ? e.Locus.Expressions[0] : e).ToArray();
            var sex = bySex ? block.States[entry.State].Sex : null;
            var found = classes.Find(c => c.Sex == sex && c.Seen.AsSpan().SequenceEqual(seen));
            if (found is null)
            {
                classes.Add(found = new LookClass(seen, sex));
            }

            found.Add(entry, block.Hatched[entry.State] * entry.Share);
        }

        classes.RemoveAll(c => c.Hatched.IsImpossible);
        Classes = classes;
    }

    public CrossBlock Block { get; }

    public IReadOnlyList<LookClass> Classes { get; }

    /// <summary>The chance of some classes together in one case of the parents.</summary>
    public Probability InCase(int matingCase, IEnumerable<LookClass> classes)
    {
        var sum = Probability.Impossible;
        foreach (var entry in classes.SelectMany(c => c.Entries))
        {
            sum += Block.ByCase[matingCase][entry.State] * Block.Viability[entry.State].ToHatchling * entry.Share;
        }

        return sum;
    }
}

/// <summary>States of a block that show the same.</summary>
internal sealed class LookClass(Expression[] seen, Sex? sex)
{
    private readonly List<CrossBlock.Entry> _entries = [];

    /// <summary>Gets what is shown, by the loci of the block.</summary>
    public Expression[] Seen { get; } = seen;

    public Sex? Sex { get; } = sex;

    public IReadOnlyList<CrossBlock.Entry> Entries => _entries;

    /// <summary>Gets the chance of an egg that hatches and shows this.</summary>
    public Probability Hatched { get; private set; }

    public void Add(CrossBlock.Entry entry, Probability hatched)
    {
        _entries.Add(entry);
        Hatched += hatched;
    }
}
