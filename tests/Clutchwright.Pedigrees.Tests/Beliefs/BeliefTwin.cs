using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Meiosis;
using Clutchwright.Pedigrees.Beliefs;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>The belief at one linkage group written from the definition: every pair of gametes of every case of the parents, and Bayes'
/// rule in plain doubles. Slow.</summary>
internal sealed class BeliefTwin
{
    private readonly BeliefCase _case;
    private readonly LinkageGroup _group;
    private readonly bool _isOrdered;
    private Dictionary<Diplotype, double> _now = [];

    public BeliefTwin(BeliefCase @case, LinkageGroup group)
    {
        (_case, _group) = (@case, group);
        _isOrdered = group.IsSex && @case.Sex == @case.Species.SexSystem.Heterogametic();
        Reckon();
    }

    public IReadOnlyDictionary<Diplotype, double> Belief => _now;

    public List<(BeliefSource Source, int Observation)> Conflicts { get; } = [];

    private IReadOnlyList<Observation> Records => _case.Observations;

    private void Reckon()
    {
        var parents = OfParents();
        var isWild = parents.Keys.All(d => d == default);
        var said = FirstOf<Observation.Said>(o => Speaks(o.Reading));
        var seen = FirstOf<Observation.Seen>(o => Speaks(o.Reading));
        var found = FirstOf<Observation.DnaTest>(o => o.Copies > 0 && o.Allele.Locus.Group == _group);
        var words = said ?? seen ?? found;

        // The parents are the start, unless nothing is known of them, or one is missing and the words tell what the other alone cannot.
        var oneCannot = said is not null || (seen is { } s && parents.Keys.All(d => OfSeen((Observation.Seen)Records[s], d) == 0.0));
        int? start = null;
        if (!isWild && (_case.BothParentsKnown || !oneCannot))
        {
            _now = parents;
        }
        else if (words is { } first)
        {
            start = first;
            _now = Doubted(Spoken(first), Sure(first));
            if (!isWild)
            {
                Weigh(BeliefSource.Parents, first, d => parents.Keys.Any(p => HasPart(p, d)) ? 1.0 : 0.0, null);
            }
        }
        else
        {
            _now = new() { [default] = 1.0 };
            return;
        }

        for (var i = 0; i < Records.Count; i++)
        {
            if (i != start || (Records[i] is Observation.Seen && Sure(i) == 1.0))
            {
                Take(i, fromParents: start is null);
            }
        }
    }

    private void Take(int index, bool fromParents)
    {
        switch (Records[index])
        {
            case Observation.Seen seen:
                Weigh(BeliefSource.Seen, index, d => OfSeen(seen, d), () => Table(seen.Reading));
                break;
            case Observation.Said said when Speaks(said.Reading):
                // A possible het adds nothing to what the parents' records say.
                if (!(fromParents && said.Basis == StatementBasis.Told && Table(said.Reading).ContainsKey(default)))
                {
                    Weigh(BeliefSource.Said, index, d => Table(said.Reading).ContainsKey(d) ? 1.0 : 0.0, () => Table(said.Reading));
                }

                break;
            case Observation.RuledOut ruledOut when ruledOut.Alleles.Any(a => a.Locus.Group == _group):
                Weigh(BeliefSource.RuledOut, index, d => ruledOut.Alleles.All(a => a.Locus.Group != _group || Copies(d, a) == 0) ? 1.0 : 0.0, () => Cleaned(ruledOut.Alleles));
                break;
            case Observation.DnaTest test when test.Allele.Locus.Group == _group:
                Weigh(BeliefSource.DnaTest, index, d => OfTest(test, Copies(d, test.Allele)), () => test.Copies == 0 ? Cleaned([test.Allele]) : Found(test));
                break;
        }
    }

    private void Weigh(BeliefSource source, int index, Func<Diplotype, double> likelihood, Func<Dictionary<Diplotype, double>>? otherwise)
    {
        // Someone who is c sure is right with chance c.
        var sure = source == BeliefSource.Parents ? 1.0 : Sure(index);
        var weighed = _now.ToDictionary(p => p.Key, p => p.Value * ((sure * likelihood(p.Key)) + ((1.0 - sure) * (1.0 - likelihood(p.Key)))));
        var total = weighed.Values.Sum();
        if (total > 0.0)
        {
            _now = weighed.Where(p => p.Value > 0.0).ToDictionary(p => p.Key, p => p.Value / total);
            return;
        }

        Conflicts.Add((source, index));
        _now = otherwise?.Invoke() ?? _now;
    }

    private double Sure(int index) => Records[index].Confidence.Value;

    private static Dictionary<Diplotype, double> Doubted(Dictionary<Diplotype, double> table, double sure)
    {
        var doubted = table.ToDictionary(p => p.Key, p => p.Value * sure);
        if (sure < 1.0)
        {
            Add(doubted, default, 1.0 - sure);
        }

        return doubted;
    }

    private Dictionary<Diplotype, double> OfParents()
    {
        var species = _case.Species;
        var two = species.SexSystem.Heterogametic();
        var table = new Dictionary<Diplotype, double>();
        foreach (var (sire, dam, weight) in _case.Parents)
        {
            var ofPair = new Dictionary<Diplotype, double>();
            foreach (var s in sire[_group])
            {
                foreach (var d in dam[_group])
                {
                    foreach (var fromSire in GameteFormation.Of(_group, s.Value, two == Sex.Male))
                    {
                        foreach (var fromDam in GameteFormation.Of(_group, d.Value, two == Sex.Female))
                        {
                            var (deciding, other) = two == Sex.Male ? (fromSire.Value, fromDam.Value) : (fromDam.Value, fromSire.Value);
                            var sex = deciding.CarriesUnshared ? two : two.Opposite();
                            if (!_group.IsSex || _case.Sex is null || _case.Sex == sex)
                            {
                                Add(ofPair, Key(other.Haplotype, deciding.Haplotype), s.Weight.Value * d.Weight.Value * fromSire.Weight.Value * fromDam.Weight.Value);
                            }
                        }
                    }
                }
            }

            var total = ofPair.Values.Sum();
            foreach (var (key, value) in ofPair.Where(p => p.Value > 0.0))
            {
                Add(table, key, weight.Value * value / total);
            }
        }

        return table.Count == 0 ? new() { [default] = 1.0 } : table;
    }

    // The chance that an animal of these two haplotypes looks as it was seen: every way in which its loci may show, judged as a whole.
    private double OfSeen(Observation.Seen seen, Diplotype diplotype)
    {
        var ways = new List<(List<Expression> Shown, double Chance)> { ([], 1.0) };
        foreach (var locus in _group.Loci)
        {
            ways = [.. ways.SelectMany(_ => locus.ExpressionsOf(At(diplotype.First, locus), At(diplotype.Second, locus)),
                (w, e) => ((List<Expression>)[.. w.Shown, e.Value], w.Chance * e.Weight.Value))];
        }

        return ways.Where(w => w.Shown.All(e => Agrees(seen, e))).Sum(w => w.Chance);
    }

    private bool Agrees(Observation.Seen seen, Expression shown)
    {
        var here = seen.Forms.Where(f => f.Locus == shown.Locus).ToArray();
        if (here.Length > 0)
        {
            return here[0] == shown;
        }

        var isUnseen = !_case.Species.SeenOf([.. seen.Forms, shown]).Contains(shown);
        return !shown.IsVisible || isUnseen || shown.TellableFrom != AgeStage.Hatchling;
    }

    private static double OfTest(Observation.DnaTest test, int copies)
    {
        var isRight = copies == test.Copies;
        var rate = copies > 0 ? test.Sensitivity.Value : test.Specificity.Value;
        return isRight ? rate : 1.0 - rate;
    }

    private Dictionary<Diplotype, double> Spoken(int index)
    {
        if (Records[index] is not Observation.DnaTest test)
        {
            return Table(Records[index] is Observation.Said said ? said.Reading : ((Observation.Seen)Records[index]).Reading);
        }

        // As likely as not before the test.
        var (truly, falsely) = (test.Sensitivity.Value, 1.0 - test.Specificity.Value);
        var table = Found(test).ToDictionary(p => p.Key, p => p.Value * truly / (truly + falsely));
        if (falsely > 0.0)
        {
            Add(table, default, falsely / (truly + falsely));
        }

        return table;
    }

    private Dictionary<Diplotype, double> Found(Observation.DnaTest test)
    {
        var with = 0;
        for (var code = 0; code < _group.HaplotypeCount; code++)
        {
            if (_group.Loci.All(l => At(code, l) == (l == test.Allele.Locus ? test.Allele.Index : 0)))
            {
                with = code;
            }
        }

        var table = new Dictionary<Diplotype, double>();
        if (test.Copies == 2)
        {
            table.Add(new(with, with), 1.0);
        }
        else
        {
            Add(table, Key(with, 0), 0.5);
            Add(table, Key(0, with), 0.5);
        }

        return table;
    }

    private Dictionary<Diplotype, double> Cleaned(IReadOnlyList<Allele> alleles)
    {
        var table = new Dictionary<Diplotype, double>();
        foreach (var (diplotype, chance) in _now)
        {
            Add(table, Key(Clean(diplotype.First), Clean(diplotype.Second)), chance);
        }

        return table;

        int Clean(int haplotype) => Enumerable.Range(0, _group.HaplotypeCount).First(code => _group.Loci.All(l =>
            At(code, l) == (alleles.Any(a => a.Locus == l && a.Index == At(haplotype, l)) ? 0 : At(haplotype, l))));
    }

    // The other parent is passed in as wild: what is not wild in the young is of the one that is known.
    private static bool HasPart(Diplotype young, Diplotype animal)
    {
        var given = young.First == 0 ? young.Second : young.First;
        return animal.First == given || animal.Second == given;
    }

    private Dictionary<Diplotype, double> Table(GenotypeBelief reading) => reading[_group].ToDictionary(w => w.Value, w => w.Weight.Value);

    private bool Speaks(GenotypeBelief reading) => reading[_group].Any(w => w.Value != default);

    private int? FirstOf<T>(Func<T, bool> counts)
        where T : Observation
    {
        for (var i = 0; i < Records.Count; i++)
        {
            if (Records[i] is T record && counts(record))
            {
                return i;
            }
        }

        return null;
    }

    private int Copies(Diplotype diplotype, Allele allele) =>
        new[] { diplotype.First, diplotype.Second }.Count(h => At(h, allele.Locus) == allele.Index);

    private int At(int haplotype, Locus locus) => _group.AlleleAt(haplotype, locus.IndexInGroup);

    private Diplotype Key(int first, int second) => _isOrdered || first <= second ? new(first, second) : new(second, first);

    private static void Add(Dictionary<Diplotype, double> table, Diplotype key, double chance) =>
        table[key] = table.GetValueOrDefault(key) + chance;
}
