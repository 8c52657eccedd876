using Clutchwright.Genetics.Loci;

namespace Clutchwright.Planning.Tests.Routes;

/// <summary>The slow twin of the search for routes: one locus with one allele, every scheme written out, each reckoned as a Markov chain over the
/// states the stock can be in. Written from docs/model/routes.md; shares no code with the engine.</summary>
/// <param name="isRecessive">Whether one copy cannot be seen; otherwise one and two copies look different.</param>
/// <param name="copies">Copies each founder has, males.</param>
/// <param name="damCopies">Copies each founder has, females.</param>
/// <param name="target">Which numbers of copies are wanted.</param>
/// <param name="eggs">Good eggs a clutch has.</param>
/// <param name="seasons">The horizon.</param>
/// <param name="maleAge">Seasons until a male breeds.</param>
/// <param name="femaleAge">Seasons until a female breeds.</param>
internal sealed class RouteTwin(
    bool isRecessive, IReadOnlyList<int> copies, IReadOnlyList<int> damCopies, IReadOnlySet<int> target, int eggs, int seasons, int maleAge, int femaleAge)
{
    /// <summary>The chance by season, the pairings it takes on average and the animals held back of every scheme, bad ones too.</summary>
    public IReadOnlyList<(double[] Chance, double Pairings, int Raised)> Schemes()
    {
        var found = new List<(double[], double, int)>();
        var animals = new List<Node>();
        animals.AddRange(copies.Distinct().Select(c => new Node(Sex.Male, c, null, null, false)));
        animals.AddRange(damCopies.Distinct().Select(c => new Node(Sex.Female, c, null, null, false)));
        List<(Node Brother, Node Sister)> couples = [];
        for (var generation = 0; ; generation++)
        {
            var young = Math.Min(maleAge, femaleAge) * (generation + 1) < seasons;
            var (next, pairs) = (new List<Node>(), new List<(Node, Node)>());
            foreach (var (sire, dam) in Matings(animals, couples))
            {
                if (Reckon(sire, dam) is { } scheme)
                {
                    found.Add(scheme);
                }

                if (!young || !IsFeasible(sire, dam))
                {
                    continue;
                }

                for (var c = IsExact ? 0 : 1; c <= 2; c++)
                {
                    // Where more copies do no harm, what all young have two copies of is not taken for one.
                    if (Held(sire, dam, c) == 0.0 || (!IsExact && c == 1 && Held(sire, dam, 1) == Held(sire, dam, 2)))
                    {
                        continue;
                    }

                    next.Add(new(Sex.Male, c, sire, dam, false));
                    next.Add(new(Sex.Female, c, sire, dam, false));
                    pairs.Add((new(Sex.Male, c, sire, dam, true), new(Sex.Female, c, sire, dam, true)));
                }
            }

            if (next.Count == 0)
            {
                return found;
            }

            var known = animals.Select(a => a.Text).ToHashSet(StringComparer.Ordinal);
            animals.AddRange(next.Where(n => known.Add(n.Text)));
            known = [.. couples.Select(p => p.Brother.Text)];
            couples.AddRange(pairs.Where(p => known.Add(p.Item1.Text)));
        }
    }

    private static IEnumerable<(Node Sire, Node Dam)> Matings(List<Node> animals, List<(Node Brother, Node Sister)> couples) =>
        (from s in animals from d in animals where s.Sex == Sex.Male && d.Sex == Sex.Female select (s, d)).Concat(couples.Select(c => (c.Brother, c.Sister)));

    // The chance of two copies or of one, by Mendel: a parent with c copies gives one with c/2.
    private static double Of(Node sire, Node dam, int number)
    {
        var (s, d) = (sire.Copies / 2.0, dam.Copies / 2.0);
        return number switch { 0 => (1 - s) * (1 - d), 1 => (s * (1 - d)) + (d * (1 - s)), _ => s * d };
    }

    private double Held(Node sire, Node dam, int number) => Enumerable.Range(0, 3).Where(n => IsHeld(n, number)).Sum(n => Of(sire, dam, n));

    // Where one copy is wanted and two are not, just so many are asked for; otherwise so many or more.
    private bool IsExact => target.Contains(1) && !target.Contains(2);

    private bool IsHeld(int number, int asked) => IsExact ? number == asked : number >= asked;

    // How many look as if they met it, and what share of those does.
    private (double Seen, double Trust) Pick(Node sire, Node dam, Func<int, bool> isRight)
    {
        var (seen, right) = (0.0, 0.0);
        for (var n = 0; n <= 2; n++)
        {
            var looks = Enumerable.Range(0, 3).Any(m => isRight(m) && Look(m) == Look(n));
            seen += looks ? Of(sire, dam, n) : 0.0;
            right += isRight(n) ? Of(sire, dam, n) : 0.0;
        }

        return right == 0.0 ? (0.0, 0.0) : (seen, right / seen);

        int Look(int n) => isRecessive ? n / 2 : n;
    }

    private (double[] Chance, double Pairings, int Raised)? Reckon(Node sire, Node dam)
    {
        var (seen, trust) = Pick(sire, dam, target.Contains);
        if (seen == 0.0 || !IsFeasible(sire, dam))
        {
            return null;
        }

        // The pairings of the scheme, parents before young; a couple's is one pairing.
        var order = new List<(Node Sire, Node Dam, double First, double Second, bool IsCouple)>();
        var place = new Dictionary<Node, (int Step, int Flag)>(ReferenceEqualityComparer.Instance);
        var raised = 0;
        Walk(sire, dam);
        order.Add((sire, dam, seen, 0.0, false));
        var chances = new double[seasons + 1];

        // Summed wait by wait until nothing is left to wait for.
        var pairings = order.Sum(o => o.IsCouple ? Wait(o.First, o.Second) : Wait(o.First, 1.0));

        // A state: for each pairing the season in which the first and the second animal hatched, 0 for not yet.
        var states = new Dictionary<string, (int[] When, double Weight)>(StringComparer.Ordinal) { [string.Empty] = (new int[order.Count * 2], 1.0) };
        for (var t = 1; t <= seasons; t++)
        {
            var after = new Dictionary<string, (int[] When, double Weight)>(StringComparer.Ordinal);
            foreach (var (when, weight) in states.Values)
            {
                Season(t, 0, when, when, weight, after);
            }

            states = after;
            chances[t] = trust * states.Values.Where(s => s.When[^2] > 0).Sum(s => s.Weight);
        }

        return (chances, pairings, raised);

        double Wait(double first, double second)
        {
            var (sum, noFirst, noSecond, neither) = (0.0, 1.0, second >= 1.0 ? 0.0 : 1.0, second >= 1.0 ? 0.0 : 1.0);
            for (var t = 0; t < 100_000 && noFirst + noSecond - neither > 1e-15; t++)
            {
                sum += noFirst + noSecond - neither;
                noFirst *= Math.Pow(1 - first, eggs);
                noSecond *= second >= 1.0 ? 0.0 : Math.Pow(1 - second, eggs);
                neither *= second >= 1.0 ? 0.0 : Math.Pow(1 - first - second, eggs);
            }

            return sum;
        }

        void Walk(Node s, Node d)
        {
            foreach (var node in (Node[])[s, d])
            {
                if (node.Sire is null || place.ContainsKey(node))
                {
                    continue;
                }

                Walk(node.Sire, node.Dam!);
                var (first, right) = Pick(node.Sire, node.Dam!, n => IsHeld(n, node.Copies));
                if (node.IsOfCouple)
                {
                    place.Add(s, (order.Count, 0));
                    place.Add(d, (order.Count, 1));
                    order.Add((node.Sire, node.Dam!, first / 2, first / 2, true));
                    trust *= right * right;
                    raised += 2;
                }
                else
                {
                    place.Add(node, (order.Count, 0));
                    order.Add((node.Sire, node.Dam!, first / 2, 0.0, false));
                    trust *= right;
                    raised++;
                }
            }
        }

        void Season(int t, int step, int[] before, int[] when, double weight, Dictionary<string, (int[] When, double Weight)> into)
        {
            if (step == order.Count)
            {
                var key = string.Join(' ', when);
                into[key] = (when, weight + (into.TryGetValue(key, out var known) ? known.Weight : 0.0));
                return;
            }

            var (s, d, first, second, isCouple) = order[step];
            var isOpen = before[step * 2] == 0 || (isCouple && before[(step * 2) + 1] == 0);
            if (!isOpen || !IsReady(s) || !IsReady(d))
            {
                Season(t, step + 1, before, when, weight, into);
                return;
            }

            var (hasFirst, hasSecond) = (before[step * 2] > 0, !isCouple || before[(step * 2) + 1] > 0);
            var noFirst = Math.Pow(1 - first, eggs);
            var noSecond = Math.Pow(1 - second, eggs);
            var neither = Math.Pow(1 - first - second, eggs);
            foreach (var (one, two, chance) in ((bool, bool, double)[])
                [(false, false, neither), (true, false, noSecond - neither), (false, true, noFirst - neither), (true, true, 1 - noFirst - noSecond + neither)])
            {
                if (chance <= 0.0)
                {
                    continue;
                }

                var now = (int[])when.Clone();
                now[step * 2] = !hasFirst && one ? t : now[step * 2];
                now[(step * 2) + 1] = isCouple && !hasSecond && two ? t : now[(step * 2) + 1];
                Season(t, step + 1, before, now, weight * chance, into);
            }

            bool IsReady(Node node) => node.Sire is null
                || (place[node] is var (of, flag) && before[(of * 2) + flag] is > 0 and var hatched && hatched + (node.Sex == Sex.Male ? maleAge : femaleAge) <= t);
        }
    }

    // Females of one kind that are needed at one time: side by side they add up, one after the other the most counts.
    private bool IsFeasible(Node sire, Node dam)
    {
        return Enumerable.Range(0, 3).All(c => Needed(sire, dam, c) <= damCopies.Count(d => d == c) || Needed(sire, dam, c) == 0);

        static int Needed(Node s, Node d, int kind)
        {
            var own = d.Sire is null && d.Copies == kind ? 1 : 0;
            var before = s.IsOfCouple && s.Sire is not null
                ? Needed(s.Sire, s.Dam!, kind)
                : (s.Sire is null ? 0 : Needed(s.Sire, s.Dam!, kind)) + (d.Sire is null ? 0 : Needed(d.Sire, d.Dam!, kind));
            return Math.Max(own, before);
        }
    }

    /// <summary>An animal of a scheme: a founder, or held back with at least so many copies.</summary>
    internal sealed record Node(Sex Sex, int Copies, Node? Sire, Node? Dam, bool IsOfCouple)
    {
        public string Text { get; } = $"{Sex}{Copies}{(IsOfCouple ? "c" : "")}({Sire?.Text},{Dam?.Text})";

        public override string ToString() => Text;
    }
}
