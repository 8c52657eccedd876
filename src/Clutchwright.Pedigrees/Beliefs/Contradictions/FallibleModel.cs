using Clutchwright.Genetics.Loci;

namespace Clutchwright.Pedigrees.Beliefs.Contradictions;

/// <summary>How records weigh if each may be wrong, and what founders may be: what all reckonings of one stock share.</summary>
/// <remarks>Unlike the beliefs, every look may be misread and every word be wrong at a stated rate, and founders are drawn from outside: so any two stories about
/// the records can be compared by how probable they make them. An allele is left out of a founder of which, and of whose descendants, no record speaks of it.</remarks>
internal sealed class FallibleModel
{
    private const double Budget = 5e6;
    private readonly BeliefSettings _settings;
    private readonly BeliefCache _cache;
    private readonly CancellationToken _cancel;
    private readonly Dictionary<(int Group, Sex? Sex), double[]> _random = [];
    private readonly int[][,] _bits;
    private readonly ulong[][] _masks;

    /// <summary>Reads the alleles in play.</summary>
    public FallibleModel(Species species, IReadOnlyList<RecordedAnimal> animals, BeliefSettings settings, CauseRates rates, CancellationToken cancel)
    {
        rates.Check();
        Species = species;
        Rates = rates;
        _cancel = cancel;
        var alleles = AllelesInPlay.Of(species, animals, settings);
        var frequencies = new Dictionary<Allele, double>(settings.Frequencies);
        foreach (var (found, g) in alleles.Select((a, g) => (a, g)).Where(p => p.a is not null))
        {
            foreach (var locus in species.Groups[g].Loci)
            {
                var open = found![locus.IndexInGroup].Where(a => a > 0 && frequencies.GetValueOrDefault(locus.Alleles[a]) == 0.0).ToArray();
                var left = 1.0 - locus.Alleles.Skip(1).Sum(a => frequencies.GetValueOrDefault(a));
                foreach (var a in open)
                {
                    frequencies[locus.Alleles[a]] = Math.Min(rates.AlleleFrequency, left / (2.0 * open.Length));
                }
            }
        }

        _settings = settings with { Misreading = rates.Misreading, Frequencies = frequencies, TableBudget = Math.Min(settings.TableBudget, Budget) };
        _cache = new BeliefCache(species, _settings, null);
        Groups = [.. alleles.Select((found, g) => found is null ? null : _cache.Model(species.Groups[g], found)).OfType<GroupModel>()];
        _bits = [.. Groups.Select(Number)];
        _masks = [.. Groups.Select((m, i) => m.Space.Diplotypes.Select(d => MaskOf(i, m.Space.Group, d.First) | MaskOf(i, m.Space.Group, d.Second)).ToArray())];
    }

    /// <summary>Gets the species.</summary>
    public Species Species { get; }

    /// <summary>Gets the rates.</summary>
    public CauseRates Rates { get; }

    /// <summary>Gets the models of the groups in play.</summary>
    public GroupModel[] Groups { get; }

    /// <summary>Solves a part.</summary>
    public PartSolution Solve(NetworkPart part) => _cache.Solve(part, _cancel);

    /// <summary>The weights of every node's states at one of <see cref="Groups"/>.</summary>
    public double[][] Weights(int index, PedigreeFrame frame, VirginBirth? virginBirth)
    {
        var model = Groups[index];
        var spoken = Spoken(index, frame, virginBirth);
        var weights = new double[frame.Count][];
        for (var node = 0; node < frame.Count; node++)
        {
            var record = frame.Records[node];
            var isFounder = frame.IsFounder(node);
            var start = -1;
            var own = isFounder ? Founder(index, frame, node, spoken[node], out start) : Offspring(model, frame.Sexes[node]);
            for (var i = 0; record is not null && i < record.Observations.Count; i++)
            {
                if (i != start && OfRecord(model, record.Observations[i], isFounder) is { } of)
                {
                    for (var s = 0; s < own.Length; s++)
                    {
                        own[s] *= of[s];
                    }
                }
            }

            weights[node] = own;
        }

        return weights;
    }

    /// <summary>How probable a record is by state; <c>null</c> where it says nothing.</summary>
    public double[]? OfRecord(GroupModel model, Observation observation, bool isFounder)
    {
        if (!model.Weights.Speaks(observation) || (!isFounder && observation is Observation.Said { Basis: StatementBasis.Told } told && model.IsChance(told)))
        {
            return null;
        }

        var weights = model.Weights.Of(observation);
        var wrong = observation switch
        {
            Observation.Said or Observation.RuledOut => Rates.WrongWords,
            _ => 0.0,
        };
        var sure = observation.Confidence.Value;
        return wrong == 0.0 && sure == 1.0
            ? weights
            : [.. weights.Select(w => (1.0 - wrong) * ((sure * w) + ((1.0 - sure) * (1.0 - w))) + wrong)];
    }

    /// <summary>The weights of a founder: what it was said to be, or drawn from outside.</summary>
    /// <param name="index">The place among <see cref="Groups"/>.</param>
    /// <param name="frame">The animals.</param>
    /// <param name="node">The founder.</param>
    /// <param name="spoken">The alleles it may carry.</param>
    /// <param name="start">The place of the words it starts with; -1: none.</param>
    public double[] Founder(int index, PedigreeFrame frame, int node, ulong spoken, out int start)
    {
        var (model, sex) = (Groups[index], frame.Sexes[node]);
        if (!_random.TryGetValue((index, sex), out var random))
        {
            _random.Add((index, sex), random = model.Prior.AtRandom(sex, null));
        }

        var weights = (double[])random.Clone();
        for (var s = 0; s < weights.Length; s++)
        {
            weights[s] *= (_masks[index][s] & ~spoken) == 0 ? 1.0 : 0.0;
        }

        start = -1;
        if (frame.Records[node] is { } record)
        {
            for (var i = 0; i < record.Observations.Count && start < 0; i++)
            {
                if (record.Observations[i] is Observation.Said said && model.Weights.Speaks(said))
                {
                    start = i;
                    var told = model.Prior.FromWords(said.Reading, sex);
                    var right = (1.0 - Rates.WrongWords) * said.Confidence.Value;
                    for (var s = 0; s < weights.Length; s++)
                    {
                        weights[s] = (right * told[s]) + ((1.0 - right) * weights[s]);
                    }
                }
            }
        }

        return weights;
    }

    /// <summary>The alleles of which a record of each node or of its descendants speaks, as bits.</summary>
    public ulong[] Spoken(int index, PedigreeFrame frame, VirginBirth? virginBirth)
    {
        var (model, group) = (Groups[index], Groups[index].Space.Group);
        var spoken = new ulong[frame.Count];
        for (var node = frame.RecordedCount - 1; node >= 0; node--)
        {
            var record = frame.Records[node]!;
            foreach (var observation in virginBirth?.Dam == record.Key ? record.Observations.Concat(virginBirth.Young.SelectMany(y => y.Observations)) : record.Observations)
            {
                spoken[node] |= observation switch
                {
                    Observation.Seen seen => OfReading(seen.Reading),
                    Observation.Said said => OfReading(said.Reading),
                    Observation.DnaTest { Copies: > 0 } test when test.Allele.Locus.Group == group => Bit(_bits[index][test.Allele.Locus.IndexInGroup, test.Allele.Index]),
                    _ => 0UL,
                };
            }

            foreach (var parent in frame.PossibleSires[node].Append(frame.Sires[node]).Append(frame.Dams[node]).Where(p => p >= 0))
            {
                spoken[parent] |= spoken[node];
            }
        }

        return spoken;

        ulong OfReading(Genetics.Genotypes.GenotypeBelief reading)
        {
            var mask = 0UL;
            foreach (var (diplotype, _) in reading[group])
            {
                mask |= MaskOf(index, model.Space.Group, diplotype.First) | MaskOf(index, model.Space.Group, diplotype.Second);
            }

            return mask;
        }
    }

    private static double[] Offspring(GroupModel model, Sex? sex)
    {
        var weights = (double[])model.SurvivalOf(sex).Clone();
        for (var s = 0; s < weights.Length; s++)
        {
            weights[s] = model.Space.Sexes[s] is { } own && sex is { } known && own != known ? 0.0 : weights[s];
        }

        return weights;
    }

    private static ulong Bit(int place) => place < 0 ? 0UL : 1UL << Math.Min(place, 63);

    private static int[,] Number(GroupModel model)
    {
        var loci = model.Space.Group.Loci;
        var numbers = new int[loci.Count, loci.Max(l => l.Alleles.Count)];
        var next = 0;
        for (var l = 0; l < loci.Count; l++)
        {
            for (var a = 0; a < loci[l].Alleles.Count; a++)
            {
                numbers[l, a] = a == 0 ? -1 : next++;
            }
        }

        return numbers;
    }

    private ulong MaskOf(int index, LinkageGroup group, int haplotype)
    {
        var mask = 0UL;
        for (var l = 0; l < group.Loci.Count; l++)
        {
            mask |= Bit(_bits[index][l, group.AlleleAt(haplotype, l)]);
        }

        return mask;
    }
}
