using Clutchwright.Genetics.Crosses;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Testing;
using CsCheck;

namespace Clutchwright.Pedigrees.Tests.Beliefs;

/// <summary>A made-up animal: its sex, the pairs it may come from, and what is recorded of it.</summary>
public sealed record BeliefCase(
    SampleSpecies Sample,
    Sex? Sex,
    IReadOnlyList<(GenotypeBelief Sire, GenotypeBelief Dam, Probability Weight)> Parents,
    bool BothParentsKnown,
    IReadOnlyList<Observation> Observations)
{
    private static readonly double[] Rates = [1.0, 0.99, 0.9, 0.5];

    /// <summary>Gets animals with up to two possible pairs of parents and up to four records, true ones and false ones.</summary>
    public static Gen<BeliefCase> Any { get; } = SpeciesGen.Any.SelectMany(sample => Gen
        .Select(ScenarioGen.Beliefs(sample.Species).Array[6], Gen.Int[0, int.MaxValue])
        .Select((animals, number) => Make(sample, animals, new Random(number))));

    public Species Species => Sample.Species;

    public AnimalBelief Reckon() => BeliefReckoner.Of(
        Species,
        Sex,
        Observations,
        [.. Parents.Select(p => new Weighted<Mating>(Mating.Of(p.Sire, p.Dam), p.Weight))],
        BothParentsKnown);

    /// <inheritdoc/>
    public override string ToString()
    {
        var parents = Parents.Select(p => $"  {p.Weight}: {Say(p.Sire)}  x  {Say(p.Dam)}");
        var records = Observations.Select(o => o switch
        {
            Observation.Seen seen => $"  seen [{string.Join(' ', seen.Forms.Select(f => f.Id))}] read as {Say(seen.Reading)}",
            Observation.Said said => $"  said by {said.Basis}: {Say(said.Reading)}",
            Observation.RuledOut ruledOut => $"  ruled out {string.Join(' ', ruledOut.Alleles)}",
            Observation.DnaTest test => $"  test {test.Allele} found {test.Copies}, {test.Sensitivity}, {test.Specificity}",
            _ => "?",
        } + (o.Confidence.IsCertain ? string.Empty : $", {o.Confidence} sure"));
        return string.Join(
            Environment.NewLine, [string.Empty, $"{Sample}", $"  {Sex?.ToString() ?? "unsexed"}, both parents known: {BothParentsKnown}", .. parents, .. records]);
    }

    private static string Say(GenotypeBelief belief) => string.Join(
        "  ",
        belief.Species.Groups
            .Where(g => belief[g].Count > 1 || !belief[g][0].Value.IsWild)
            .Select(g => $"{g.Id} {string.Join(" or ", belief[g].Select(w => $"{w.Value.First}|{w.Value.Second} ({w.Weight})"))}"));

    private static BeliefCase Make(SampleSpecies sample, GenotypeBelief[] animals, Random random)
    {
        var species = sample.Species;
        var (wildSire, wildDam) = (GenotypeBelief.Wild(species, Genetics.Loci.Sex.Male), GenotypeBelief.Wild(species, Genetics.Loci.Sex.Female));
        GenotypeBelief[] sires = [.. animals.Where(a => a.Sex == Genetics.Loci.Sex.Male), wildSire];
        GenotypeBelief[] dams = [.. animals.Where(a => a.Sex == Genetics.Loci.Sex.Female), wildDam];
        var bothKnown = random.Next(3) > 0;
        var (noSire, noDam) = bothKnown ? (false, false) : random.Next(2) == 0 ? (true, false) : (false, true);
        var dam = noDam ? wildDam : dams[random.Next(dams.Length)];
        var pairs = random.Next(4) switch
        {
            0 => Array.Empty<(GenotypeBelief Sire, GenotypeBelief Dam, Probability Weight)>(),
            1 => [(Sire(), dam, Probability.Ratio(1, 2)), (Sire(), dam, Probability.Ratio(1, 2))],
            _ => [(Sire(), dam, Probability.Certain)],
        };
        Sex? sex = random.Next(4) switch { 0 => null, 1 => Genetics.Loci.Sex.Male, _ => Genetics.Loci.Sex.Female };
        var young = Young(species, sex, pairs, random.Next(3) == 0 ? animals[0] : null, random);
        var records = Enumerable.Range(0, random.Next(5)).Select(_ => Record(species, young, random))
            .Select(r => random.Next(3) > 0 ? r : r with { Confidence = Probability.From(Rates[random.Next(Rates.Length)]) })
            .ToArray();
        return new(sample, sex, pairs, bothKnown, records);

        GenotypeBelief Sire() => noSire ? wildSire : sires[random.Next(sires.Length)];
    }

    // What the animal truly is: mostly young of its parents, sometimes of others.
    private static Genotype Young(
        Species species,
        Sex? sex,
        (GenotypeBelief Sire, GenotypeBelief Dam, Probability Weight)[] pairs,
        GenotypeBelief? stranger,
        Random random)
    {
        var genotype = Genotype.Wild(species, sex ?? species.SexSystem.Heterogametic().Opposite());
        foreach (var group in species.Groups)
        {
            var possible = stranger is not null ? stranger[group]
                : pairs.Length > 0 ? Mating.Of(pairs[0].Sire, pairs[0].Dam).YoungAt(group, sex)
                : [new Weighted<Diplotype>(new(random.Next(group.HaplotypeCount), random.Next(group.HaplotypeCount)), Probability.Certain)];
            genotype = genotype.With(group, possible[random.Next(possible.Count)].Value);
        }

        return genotype;
    }

    private static Observation Record(Species species, Genotype young, Random random)
    {
        var alleles = species.Loci.SelectMany(l => l.Alleles.Skip(1)).ToArray();
        var allele = alleles[random.Next(alleles.Length)];
        switch (random.Next(6))
        {
            case 0 or 1:
                var shown = species.Loci.Select(l => (Locus: l, Pair: young.AllelesAt(l))).Select(x => x.Locus.ExpressionOf(x.Pair.First, x.Pair.Second));
                var seen = species.SeenOf([.. shown.Where(e => e.IsVisible && random.Next(5) > 0)]);
                var reading = GenotypeBelief.Wild(species, young.Sex);
                foreach (var group in seen.Select(e => e.Locus.Group).Distinct())
                {
                    reading = reading.With(group, [new(young[group], Probability.Certain)]);
                }

                return new Observation.Seen(seen, reading);
            case 2 or 3:
                var spoken = species.Groups[random.Next(species.Groups.Count)];
                var said = random.Next(3) == 0 ? new Diplotype(random.Next(spoken.HaplotypeCount), random.Next(spoken.HaplotypeCount)) : young[spoken];
                var chance = random.Next(2) == 0 ? Probability.Certain : Probability.Ratio(2, 3);
                return new Observation.Said(
                    GenotypeBelief.Wild(species, young.Sex).With(spoken, [new(said, chance), new(default, chance.Complement)]),
                    random.Next(3) == 0 ? StatementBasis.ProvenByBreeding : StatementBasis.Told);
            case 4:
                return new Observation.RuledOut(random.Next(2) == 0 ? [allele] : [allele, alleles[random.Next(alleles.Length)]]);
            default:
                var (first, second) = young.AllelesAt(allele.Locus);
                var copies = random.Next(4) == 0 ? random.Next(3) : (first == allele.Index ? 1 : 0) + (second == allele.Index ? 1 : 0);
                return new Observation.DnaTest(
                    allele, copies, Probability.From(Rates[random.Next(Rates.Length)]), Probability.From(Rates[random.Next(Rates.Length)]));
        }
    }
}
