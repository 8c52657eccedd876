using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Pairs;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Wants;

namespace Clutchwright.Desk.Looks;

/// <summary>Which makings show this look, at this age, how surely, and how near is the stock to them?</summary>
public sealed class FindLooks
{
    // What a certain pair is worth over none, in steps of the ranking: docs/model/looks.md.
    private const double StepsOfNoPair = 3.0;

    // Chances are reckoned of at most so many times the makings wanted; the order beyond is by the other steps.
    private const int LookedAhead = 2;

    private readonly OpenCatalogue _catalogue;
    private readonly Func<StockBeliefs?> _stock;
    private readonly Func<RankPairs> _pairs;
    private readonly MakingWording _wording;
    private readonly ToneReader _tones;
    private (StockState State, StockReach Reach, IReadOnlyList<string> Notes)? _reach;

    /// <param name="catalogue">The species.</param>
    /// <param name="stock">Opens the stock; <c>null</c> where there is none yet, which is not made for a question.</param>
    /// <param name="pairs">Knows who can be paired.</param>
    internal FindLooks(OpenCatalogue catalogue, Func<StockBeliefs?> stock, Func<RankPairs> pairs)
    {
        (_catalogue, _stock, _pairs) = (catalogue, stock, pairs);
        _wording = new(catalogue);
        _tones = new(catalogue.Catalogue.Tones);
    }

    /// <summary>Gets what gives, for the stock as it is, what tells how many seasons a route to a want takes; <c>null</c>: nothing does, and none is told.</summary>
    internal Func<CancellationToken, Task<Func<Want, CancellationToken, int?>>>? SeasonsNeeded { get; init; }

    /// <summary>Answers, or says everything that was asked wrongly.</summary>
    public async Task<Answer<LooksAnswer>> RunAsync(LooksQuestion question, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var query = LookQueryReader.Read(_catalogue.Catalogue, _tones, question.Query, question.Within ?? LooksQuestion.UsualWithin, problems);
        Limit(question, query, problems);
        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        var notes = new List<string>();
        var reach = await ReachAsync(notes, cancel);
        if (query.IsFromStock && reach is null)
        {
            return new AskedWrongly(LookQueryReader.Where, "The stock holds no animal to make it from. Leave out 'from my stock', or add animals first.");
        }

        var wish = Wish(query, question, reach);
        var (placed, isMore) = Place(_catalogue.Catalogue.FindLooks(wish, cancel), question.Most, reach, cancel);
        var seasons = SeasonsNeeded is { } needed && reach is not null && placed.Count > 0 ? await needed(cancel) : null;
        var makings = new List<Making>();
        foreach (var (match, steps, nearness) in placed)
        {
            makings.Add(_wording.Making(match, wish.MainStage) with
            {
                Steps = steps,
                Nearness = nearness,
                SeasonsNeeded = seasons?.Invoke(MakingWording.Want(match), cancel),
            });
        }

        if (makings.Count > 0 && query.Genotype.Count == 0 && makings.TrueForAll(m => m.Loci.Count == 0))
        {
            notes.Add("Only the normal animal looks so.");
        }

        return new LooksAnswer(question.Query.Trim(), query.Sentence(wish.MainStage), wish.MainStage.ToString().ToLowerInvariant(), makings, isMore, notes);
    }

    private static void Limit(LooksQuestion question, LookQuery query, List<AskedWrongly> problems)
    {
        if (question.At is { } at)
        {
            if (!Enum.TryParse<AgeStage>(at, ignoreCase: true, out var stage) || !Enum.IsDefined(stage))
            {
                problems.Add(new("at", $"'{at}' is no stage of life; write hatchling, juvenile, subadult or adult.", DidYouMean: NearWords.Of(at, Enum.GetNames<AgeStage>().Select(s => s.ToLowerInvariant()))));
            }
            else if (query.Course is not null && (query.Course != LookCourse.AtOneAge || query.Stage != stage))
            {
                problems.Add(new("at", $"The query says an age of its own; leave out {at}, or the age in the query."));
            }
            else
            {
                (query.Course, query.Stage) = (LookCourse.AtOneAge, stage);
            }
        }

        if (question.Within is { } within && within is not (> 0.0 and <= 100.0))
        {
            problems.Add(new("within", $"{within} is no distance; write a number above 0 and up to 100."));
        }

        if (question.Genes is { } genes && genes is < 1 or > LookWish.GreatestGenes)
        {
            problems.Add(new("genes", $"{genes} is no number of genes; write 1 to {LookWish.GreatestGenes}."));
        }

        if (question.Most < 1)
        {
            problems.Add(new("most", $"{question.Most} is no number of makings to list. Write 1 or more."));
        }

        query.IsFromStock |= question.FromStock;
        query.IsWithoutHarm |= question.WithoutHarm;
    }

    private static LookWish Wish(LookQuery query, LooksQuestion question, StockReach? reach) => new()
    {
        Tones = [.. query.Tones.Select(t => t.Wish)],
        Words = [.. query.Words.Select(w => w.Wish)],
        White = query.White,
        Course = query.Course ?? LookCourse.AtOneAge,
        Stage = query.Stage ?? AgeStage.Adult,
        MostChange = question.Within ?? LooksQuestion.UsualWithin,
        MostGenes = question.Genes ?? query.Genes ?? 2,
        With = [.. query.Genotype.Where(g => g.IsIn).Select(g => g.Allele)],
        Without = [.. query.Genotype.Where(g => !g.IsIn).Select(g => g.Allele)],
        AtHand = reach?.Carried,
        IsOfThoseAtHand = query.IsFromStock,
        IsWithoutHarm = query.IsWithoutHarm,
    };

    // The stock's share of the steps is known only by reckoning pairs. It is never below 0, so once enough makings come before the next one's
    // other steps, nothing that follows can stand among them.
    private static (List<(LookMatch Match, PlaceSteps Steps, Nearness? Nearness)> Placed, bool IsMore) Place(
        IEnumerable<LookMatch> matches, int most, StockReach? reach, CancellationToken cancel)
    {
        var placed = new List<(LookMatch Match, PlaceSteps Steps, Nearness? Nearness)>();
        foreach (var match in matches)
        {
            if (placed.Count > most
                && (reach is null || placed.Count > most * LookedAhead || placed.Count(p => p.Steps.Sum <= match.Steps.Sum) > most))
            {
                break;
            }

            var nearness = reach is null ? null : NearnessOf(match, reach, cancel);
            var steps = match.Steps;
            placed.Add((match, new(
                steps.Distance,
                steps.Doubt,
                steps.Alleles,
                steps.Missing + (nearness is null ? 0.0 : StepsOfNoPair * (1.0 - (nearness.BestChance?.Value ?? 0.0))),
                steps.Harm), nearness));
        }

        return ([.. placed.OrderBy(p => p.Steps.Sum).Take(most)], placed.Count > most);
    }

    private static Nearness NearnessOf(LookMatch match, StockReach reach, CancellationToken cancel)
    {
        var missing = match.Made.SelectMany(m => m.Missing).Select(a => a.Name).Distinct(StringComparer.Ordinal).ToArray();
        if (missing.Length > 0)
        {
            return new(missing, null, null, false);
        }

        var (chance, pair, isOnlyByLeftOut) = reach.Best(match.Forms, cancel);
        return new(missing, chance, pair, isOnlyByLeftOut);
    }

    // null: no animal is kept.
    private async Task<StockReach?> ReachAsync(List<string> notes, CancellationToken cancel)
    {
        if (_stock() is not { } stock)
        {
            return null;
        }

        var state = await stock.ReadAsync(cancel);
        if (_reach is { } known && ReferenceEquals(known.State, state))
        {
            notes.AddRange(known.Notes);
            return known.Reach;
        }

        var here = state.Animals.Where(a => a.IsHere).ToArray();
        if (here.Length == 0)
        {
            return null;
        }

        var problems = new List<AskedWrongly>();
        var (eggs, _) = _catalogue.Clutches.Of(new(null, null, null), withLaying: true, problems);
        var reach = new StockReach(state, here, _pairs().Breeders(here, notes), eggs);
        _reach = (state, reach, [.. notes]);
        return reach;
    }
}
