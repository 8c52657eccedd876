using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Kinship;

namespace Clutchwright.Desk.Kin;

/// <summary>Who is inbred; how related are two animals, and by which routes; where do the genes of the stock come from?</summary>
public sealed class AskKin
{
    private readonly AnimalSource _source;

    internal AskKin(AnimalSource source) => _source = source;

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public async Task<Answer<KinAnswer>> RunAsync(KinQuestion question, CancellationToken cancel)
    {
        var read = await _source.ReadAsync(question.File, cancel);
        if (read.Value is not { } source)
        {
            return read.Problems.ToArray();
        }

        cancel.ThrowIfCancellationRequested();
        var problems = new List<AskedWrongly>();
        var recombination = question.SexLinked is { } linked ? Recombination(linked, problems) : null;
        var founders = question.FounderKinship is { } given ? FounderKinshipFile.Read(given, source.Animals) : null;
        problems.AddRange(founders?.Problems ?? []);
        if (Reckon(source, founders?.Value, question.FounderKinship, problems) is not { } stock)
        {
            return problems.ToArray();
        }

        var first = Find(stock, question.File, "pair", question.Pair?.First, problems);
        var second = Find(stock, question.File, "pair", question.Pair?.Second, problems);
        var animal = Find(stock, question.File, "animal", question.Animal, problems);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        return new KinAnswer(
            [.. Enumerable.Range(0, stock.Count).Select(stock.Line)],
            first is { } one && second is { } other ? Pair(stock, one, other, question.MostRoutes) : null,
            animal is { } asked ? ShowRelatives.Of(stock, asked, question.MostRoutes) : null,
            question.WithFounders ? stock.Founders() : null,
            recombination is { } fraction ? SexLinked(stock, fraction, first, second) : null,
            Notes(stock, source.SireWeights.Count, founders?.Value is not null && recombination is not null));
    }

    private static KinStock? Reckon(SourceAnimals source, FounderKinshipFile? founders, NamedFile? file, List<AskedWrongly> problems)
    {
        try
        {
            return new KinStock(source.Animals, source.SireWeights, founders);
        }
        catch (ImpossibleKinshipException impossible)
        {
            var founder = source.Animals.First(a => KinStock.Key(a.AnimalId) == impossible.Founder).Tag;
            problems.Add(new(
                file!.Name,
                $"No animals can be related so: the kinships of {founder} with the founders before it contradict each other. "
                    + "Two that are closely related to a third are related to each other; give them a row too."));
            return null;
        }
    }

    private RecombinationFraction? Recombination(string text, List<AskedWrongly> problems)
    {
        if (ChanceReader.Read(text) is { } share)
        {
            if (share <= Probability.Half)
            {
                return RecombinationFraction.From(share.Value);
            }
        }
        else if ((_source.Catalogue.Species.FindLocus(text.Trim()) ?? _source.Catalogue.Catalogue.FindAllele(text)?.Allele.Locus) is { } locus)
        {
            if (locus.Placement is Placement.SexLinked placement)
            {
                return placement.Recombination;
            }

            problems.Add(new("sex-linked", $"{text} does not ride with sex. Name a sex-linked gene, or a recombination fraction from 0 to 0.5."));
            return null;
        }

        problems.Add(new("sex-linked", $"'{text}' is no recombination fraction from 0 to 0.5, and no gene."));
        return null;
    }

    private SexLinkedKin SexLinked(KinStock stock, RecombinationFraction recombination, int? first, int? second)
    {
        var system = _source.Catalogue.Species.SexSystem;
        var kinship = stock.SexLinked(system, recombination);
        var (one, other) = (first is { } a ? stock.PositionOf(a) : -1, second is { } b ? stock.PositionOf(b) : -1);
        return new(
            recombination.Value,
            system == SexSystem.XY ? "X" : "Z",
            [.. Enumerable.Range(0, stock.Count).Select(i => kinship.InbreedingOf(stock.PositionOf(i)))],
            one < 0 ? null : kinship.Between(one, other),
            one < 0 || stock[first!.Value].Sex is null || stock[second!.Value].Sex is null ? null : kinship.BetweenShared(one, other));
    }

    internal static KinPair Pair(KinStock stock, int first, int second, int mostRoutes)
    {
        var (one, other) = (stock.PositionOf(first), stock.PositionOf(second));
        return new(
            stock.Animal(first),
            stock.Animal(second),
            stock.Reckoner.Between(one, other),
            (stock.Exact ?? ExactKinship.Of(stock.Reckoner.Descent, [one, other]))?.Between(one, other),
            stock.Reckoner.Inbreeding[one],
            stock.Reckoner.Inbreeding[other],
            stock.Relation(first, second),
            stock.Routes(one, other, mostRoutes),
            first != second && (stock[first].Sex is null || stock[first].Sex != stock[second].Sex));
    }

    internal static int? Find(KinStock stock, NamedFile? file, string where, string? tag, List<AskedWrongly> problems)
    {
        if (tag is null)
        {
            return null;
        }

        var found = stock.Find(tag);
        if (found is null)
        {
            problems.Add(new(
                where, $"{(file is null ? "The stock" : file.Name)} has no animal '{tag}'", DidYouMean: [.. NearWords.Of(tag, stock.Tags).Take(2)]));
        }

        return found;
    }

    private static List<string> Notes(KinStock stock, int weighed, bool areFoundersApart)
    {
        var notes = new List<string>();
        var halves = Enumerable.Range(0, stock.Count).Count(i => (stock[i].DamId is null) != (stock[i].SireId is null && stock[i].PossibleSireIds.Count == 0));
        if (halves > 0)
        {
            notes.Add($"{(halves == 1 ? "1 animal has" : $"{halves} animals have")} one parent that is not known; such a parent is taken as unrelated to all others.");
        }

        var doubts = Enumerable.Range(0, stock.Count).Count(i => stock[i].PossibleSireIds.Count > 0);
        if (doubts > 0)
        {
            var likely = weighed == 0 ? "each is taken as equally likely" : weighed == doubts ? "each counts with its chance from the file" : "each counts with its chance from the file, or is as likely as another where it gives none";
            notes.Add($"{(doubts == 1 ? "1 animal has" : $"{doubts} animals have")} several possible sires; {likely}, and the figures are the mean over them.");
        }

        if (areFoundersApart)
        {
            notes.Add("The founders' kinship holds for autosomes; on the sex chromosomes all founders are taken as unrelated.");
        }

        return notes;
    }
}
