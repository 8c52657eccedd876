using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Genetics.Crosses;

/// <summary>Lists the looks of a cross, likeliest first, lazily.</summary>
/// <remarks>
/// Blocks where a form can come up that hides something ("hiders") are multiplied out among themselves, and their combinations
/// put together by what is seen of them: by that, what is hidden in every other block is settled. For each such sight the
/// other blocks are again independent factors, with classes put together where a difference is hidden, and are listed best first; the lists of
/// all sights are merged by a queue.
/// </remarks>
internal static class LookListing
{
    public static IEnumerable<LookOutcome> Of(Cross cross, AgeStage stage)
    {
        if (cross.Survival.IsImpossible)
        {
            yield break;
        }

        var blocks = cross.Blocks
            .Where(b => cross.IsBySex || !(b.HasSex && b.Loci.Count == 0 && b.Groups.Count == 1))
            .Select(b => new LookBlock(b, stage, cross.IsBySex))
            .ToArray();
        var masks = cross.Mating.Species.Masks;
        var possible = blocks.SelectMany(b => b.Classes).SelectMany(c => c.Seen).Where(e => e.IsVisible).ToHashSet();
        var hiders = blocks.Where(b => b.Classes.Any(c => c.Seen.Any(e => Hides(masks, e, possible)))).ToArray();
        var others = blocks.Except(hiders).ToArray();

        var queue = new PriorityQueue<(Sight Sight, IEnumerator<(int[] Choice, double LogProduct)> List), (double Loss, int Order)>();
        var order = 0;
        foreach (var sight in Sights(hiders, masks))
        {
            Next(sight, sight.Over(others).GetEnumerator());
        }

        while (queue.TryDequeue(out var best, out _))
        {
            yield return best.Sight.Outcome(cross, hiders, others, best.List.Current.Choice);
            Next(best.Sight, best.List);
        }

        void Next(Sight sight, IEnumerator<(int[] Choice, double LogProduct)> list)
        {
            if (list.MoveNext())
            {
                queue.Enqueue((sight, list), (-(Math.Log(sight.Chance.Value) + list.Current.LogProduct), order++));
            }
            else
            {
                list.Dispose();
            }
        }
    }

    private static bool Hides(MaskTable masks, Expression expression, HashSet<Expression> possible) =>
        masks.MaskOf(expression) is { } mask && possible.Any(mask.Hides);

    private static List<Sight> Sights(LookBlock[] hiders, MaskTable masks)
    {
        var sights = new Dictionary<SightKey, Sight>();
        var choice = new int[hiders.Length];
        while (true)
        {
            var chance = hiders.Select((b, i) => b.Classes[choice[i]].Hatched).Aggregate(Probability.Certain, (p, q) => p * q);
            if (!chance.IsImpossible)
            {
                var shown = hiders.SelectMany((b, i) => b.Classes[choice[i]].Seen).ToArray();
                var acting = masks.Acting(shown.Where(e => e.IsVisible));
                var sex = hiders.Select((b, i) => b.Classes[choice[i]].Sex).FirstOrDefault(s => s is not null);
                var seen = shown.Select(e => Sight.Through(e, acting)).ToArray();
                var key = new SightKey(seen, sex);
                if (!sights.TryGetValue(key, out var sight))
                {
                    sights.Add(key, sight = new Sight(seen, sex, acting));
                }

                sight.Add((int[])choice.Clone(), chance);
            }

            var at = 0;
            while (at < choice.Length && ++choice[at] == hiders[at].Classes.Count)
            {
                choice[at++] = 0;
            }

            if (at == choice.Length)
            {
                return [.. sights.Values];
            }
        }
    }

    private readonly struct SightKey(Expression[] seen, Sex? sex) : IEquatable<SightKey>
    {
        private readonly Expression[] _seen = seen;
        private readonly Sex? _sex = sex;

        public bool Equals(SightKey other) => _sex == other._sex && _seen.AsSpan().SequenceEqual(other._seen);

        public override bool Equals(object? obj) => obj is SightKey other && Equals(other);

        public override int GetHashCode()
        {
            var hash = new HashCode();
            hash.Add(_sex);
            foreach (var expression in _seen)
            {
                hash.Add(expression);
            }

            return hash.ToHashCode();
        }
    }
}
