using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Tests.Routes;

/// <summary>The slow twin of the search for routes over several free loci: every scheme of a small room written out, each reckoned as a Markov chain over
/// the states the stock can be in. Written from docs/model/routes.md; shares no code with the engine.</summary>
/// <param name="room">The room.</param>
internal sealed class RoomTwin(Room room)
{
    private const double LeastHeld = 0.01;
    private readonly double _meanEggs = room.Eggs.Select((p, n) => p * n).Sum();

    /// <summary>Every scheme that holds back no more animals than the room has place for, bad ones too.</summary>
    /// <param name="most">The most schemes; <c>null</c> is given where there are more.</param>
    public IReadOnlyList<Scheme>? Schemes(int most)
    {
        var animals = Founders().ToList();
        var couples = new List<(Node Brother, Node Sister)>();
        var matings = new List<(Node Sire, Node Dam)>();
        for (var raised = 0; raised <= room.MostRaised; raised++)
        {
            // All ways to pair animals that took just so many held back, then their young.
            (Node Sire, Node Dam)[] here =
            [
                .. from s in animals
                   where s.Sex == Sex.Male && s.Raised <= raised
                   from d in animals
                   where d.Sex == Sex.Female && s.Raised + d.Raised == raised && IsFeasible(s, d)
                   select (s, d),
                .. couples.Where(c => c.Brother.Raised == raised),
            ];
            matings.AddRange(here);
            if (matings.Count > most)
            {
                return null;
            }

            foreach (var (sire, dam) in here)
            {
                foreach (var asked in Asks().Where(a => Pick(sire, dam, l => n => IsHeld(l, n, a[l])) is var (seen, right) && seen / 2 * _meanEggs >= LeastHeld && right > 0.0))
                {
                    if (raised < room.MostRaised)
                    {
                        animals.AddRange(new[] { Sex.Male, Sex.Female }.Select(sex => new Node(sex, asked, sire, dam, raised + 1, false)).Where(n => Earliest(n) <= room.Seasons));
                    }

                    if (raised + 1 < room.MostRaised)
                    {
                        var (brother, sister) = (new Node(Sex.Male, asked, sire, dam, raised + 2, true), new Node(Sex.Female, asked, sire, dam, raised + 2, true));
                        if (Math.Max(Earliest(brother), Earliest(sister)) <= room.Seasons)
                        {
                            couples.Add((brother, sister));
                        }
                    }
                }
            }
        }

        return [.. matings.Select(m => Reckon(m.Sire, m.Dam)).OfType<Scheme>()];
    }

    // Founders alike are one; one in doubt may be taken for what it may have, or for less.
    private IEnumerable<Node> Founders()
    {
        var seen = new HashSet<string>();
        foreach (var founder in room.Founders)
        {
            foreach (var (copies, trust) in Readings(founder))
            {
                var node = new Node(founder.Sex, copies, null, null, 0, false) { Ready = founder.Ready, Trust = trust };
                if (seen.Add(node.Kind))
                {
                    yield return node;
                }
            }
        }
    }

    private IEnumerable<(int[] Copies, double Trust)> Readings(RoomFounder founder)
    {
        if (founder.Doubtful is not { } locus)
        {
            yield return (founder.Copies, 1.0);
            yield break;
        }

        yield return (founder.Copies, founder.Chance);
        int[] without = [.. founder.Copies];
        without[locus] = 0;
        yield return (without, IsExact(locus) ? 1.0 - founder.Chance : 1.0);
    }

    // What may be asked of young: so many copies at each locus. An animal of which nothing is asked is no use, but where copies too many harm.
    private IEnumerable<int[]> Asks()
    {
        IEnumerable<int[]> asks = [[]];
        for (var l = 0; l < room.Loci.Count; l++)
        {
            asks = asks.SelectMany(a => Enumerable.Range(0, 3).Select(c => (int[])[.. a, c]));
        }

        return asks.Where(a => a.Any(c => c > 0) || Enumerable.Range(0, room.Loci.Count).Any(IsExact));
    }

    private bool IsExact(int locus) => room.Loci[locus].Target.Contains(1) && !room.Loci[locus].Target.Contains(2);

    private bool IsHeld(int locus, int number, int asked) => IsExact(locus) ? number == asked : number >= asked;

    // Mendel at every locus for itself: a parent with c copies gives one with c/2.
    private (double Seen, double Right) Pick(Node sire, Node dam, Func<int, Func<int, bool>> isRightAt)
    {
        var (seen, right) = (1.0, 1.0);
        for (var l = 0; l < room.Loci.Count; l++)
        {
            var (s, d) = (sire.Copies[l] / 2.0, dam.Copies[l] / 2.0);
            double[] young = [(1 - s) * (1 - d), (s * (1 - d)) + (d * (1 - s)), s * d];
            var isRight = isRightAt(l);
            var here = l;
            seen *= Enumerable.Range(0, 3).Where(n => Enumerable.Range(0, 3).Any(m => isRight(m) && Look(here, m) == Look(here, n))).Sum(n => young[n]);
            right *= Enumerable.Range(0, 3).Where(n => isRight(n)).Sum(n => young[n]);
        }

        return (seen, right);
    }

    private int Look(int locus, int number) => room.Loci[locus].IsRecessive ? number / 2 : number;

    private int Earliest(Node node) => node.Sire is null
        ? node.Ready
        : Math.Max(Earliest(node.Sire), Earliest(node.Dam!)) + (node.Sex == Sex.Male ? room.MaleAge : room.FemaleAge);

    // The chance that one clutch has none of what has a chance per good egg.
    private double None(double chance) => room.Eggs.Select((p, n) => p * Math.Pow(1 - chance, n)).Sum();

    private Scheme? Reckon(Node sire, Node dam)
    {
        var (seen, right) = Pick(sire, dam, l => room.Loci[l].Target.Contains);
        if (right == 0.0)
        {
            return null;
        }

        var plan = new TwinPlan(room, None);
        var trust = right / seen;
        Walk(sire, dam);
        plan.Add(sire, dam, (null, seen), null);
        foreach (var founder in Tree(sire).Concat(Tree(dam)).Where(n => n.Sire is null).DistinctBy(n => n.Kind))
        {
            trust *= founder.Trust;
        }

        var raised = plan.Steps.Sum(s => s.First.Young is null ? 0 : s.Second is null ? 1 : 2);
        trust *= Math.Pow(room.Rearing, raised);
        return new([.. plan.HatchedBy().Select(p => p * trust)], plan.Pairings(), raised, $"{sire} x {dam}");

        void Walk(Node s, Node d)
        {
            foreach (var node in (Node[])[s, d])
            {
                if (node.Sire is null || plan.Has(node))
                {
                    continue;
                }

                Walk(node.Sire, node.Dam!);
                var (looks, meets) = Pick(node.Sire, node.Dam!, l => n => IsHeld(l, n, node.Copies[l]));
                trust *= node.IsOfCouple ? meets / looks * (meets / looks) : meets / looks;
                plan.Add(node.Sire, node.Dam!, (node.IsOfCouple ? s : node, looks / 2), node.IsOfCouple ? (d, looks / 2) : null);
            }
        }
    }

    private static IEnumerable<Node> Tree(Node node) => node.Sire is null ? [node] : Tree(node.Sire).Concat(Tree(node.Dam!)).Append(node);

    // Females of one kind that are needed at one time: side by side they add up, one after the other the most counts. What one female may be taken for
    // in two ways is she still.
    private bool IsFeasible(Node sire, Node dam)
    {
        var kinds = Tree(sire).Concat(Tree(dam)).Where(n => n.Sire is null && n.Sex == Sex.Female).DistinctBy(n => n.Kind).ToArray();
        return kinds.All(k => Needed(sire, dam, n => n.Kind == k.Kind) <= room.Founders.Count(f => Is(f, k)))
            && kinds.All(k => Alike(k) is var alike && Needed(sire, dam, n => room.Founders.Any(f => alike.Contains(f) && Is(f, n))) <= alike.Count);

        static int Needed(Node s, Node d, Func<Node, bool> counts)
        {
            var own = d.Sire is null && counts(d) ? 1 : 0;
            var before = s.IsOfCouple && d.IsOfCouple && ReferenceEquals(s.Sire, d.Sire) && ReferenceEquals(s.Dam, d.Dam)
                ? Needed(s.Sire!, s.Dam!, counts)
                : (s.Sire is null ? 0 : Needed(s.Sire, s.Dam!, counts)) + (d.Sire is null ? 0 : Needed(d.Sire, d.Dam!, counts));
            return Math.Max(own, before);
        }
    }

    private bool Is(RoomFounder founder, Node node) => founder.Sex == node.Sex && founder.Ready == node.Ready
        && Readings(founder).Any(r => r.Copies.SequenceEqual(node.Copies) && Math.Abs(r.Trust - node.Trust) < 1e-12);

    // The founders that share a way to be taken, one with the other and on.
    private HashSet<RoomFounder> Alike(Node node)
    {
        var all = room.Founders.Where(f => Is(f, node)).ToHashSet();
        while (room.Founders.FirstOrDefault(f => !all.Contains(f) && all.Any(a => f.Sex == a.Sex && f.Ready == a.Ready
            && Readings(f).Any(r => Readings(a).Any(q => q.Copies.SequenceEqual(r.Copies) && Math.Abs(q.Trust - r.Trust) < 1e-12)))) is { } more)
        {
            all.Add(more);
        }

        return all;
    }

    /// <summary>An animal of a scheme: a founder, or held back with so many copies at each locus.</summary>
    internal sealed class Node(Sex sex, int[] copies, Node? sire, Node? dam, int raised, bool isOfCouple)
    {
        public Sex Sex => sex;

        public int[] Copies => copies;

        public Node? Sire => sire;

        public Node? Dam => dam;

        /// <summary>Animals held back for it, itself included; of a couple both.</summary>
        public int Raised => raised;

        public bool IsOfCouple => isOfCouple;

        public int Ready { get; init; } = 1;

        public double Trust { get; init; } = 1.0;

        public string Kind => $"{Sex} {string.Join(string.Empty, Copies)} from {Ready} by {Trust:R}";

        public override string ToString() => sire is null ? Kind : $"{Sex} {string.Join(string.Empty, Copies)}{(isOfCouple ? "c" : string.Empty)}({sire},{dam})";
    }
}

/// <summary>A scheme and its figures.</summary>
/// <param name="Chance">By the end of each season.</param>
/// <param name="Pairings">On average, until it succeeds.</param>
/// <param name="Raised">Animals held back.</param>
/// <param name="Text">The scheme itself.</param>
internal sealed record Scheme(double[] Chance, double Pairings, int Raised, string Text);
