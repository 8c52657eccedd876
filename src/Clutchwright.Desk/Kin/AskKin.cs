using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
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
        var stock = new KinStock(source.Animals);
        var problems = new List<AskedWrongly>();
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
            Notes(stock));
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

    private static List<string> Notes(KinStock stock)
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
            notes.Add($"{(doubts == 1 ? "1 animal has" : $"{doubts} animals have")} several possible sires; each is taken as equally likely, and the figures are the mean over them.");
        }

        return notes;
    }
}
