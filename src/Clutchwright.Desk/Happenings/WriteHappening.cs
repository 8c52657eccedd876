using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Happenings;

/// <summary>Writes down what happened to an animal, corrects it and takes it back.</summary>
public sealed class WriteHappening
{
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;
    private readonly WriteClutch _clutches;
    private readonly TimeProvider _clock;

    internal WriteHappening(OpenBook book, ListDeeds deeds, WriteClutch clutches, TimeProvider clock) => (_book, _deeds, _clutches, _clock) = (book, deeds, clutches, clock);

    /// <summary>Writes it; the deed is given back for undoing.</summary>
    public async Task<Answer<DeedLine>> RunAsync(HappeningForm form, string who, CancellationToken cancel)
    {
        var read = await ReadAsync(form, cancel);
        if (read.Value?.Item2.Kind == HappeningKind.Laid)
        {
            return await LaidAsync(form, who, cancel);
        }

        return read.Value is var (animal, entry)
            ? await DoneAsync(await new RecordHappening(_book.Book).RunAsync(animal, entry, who, cancel), cancel)
            : read.Problems.ToArray();
    }

    /// <summary>Corrects it; the history keeps what stood there. The animal stays the same.</summary>
    public async Task<Answer<DeedLine>> CorrectAsync(Guid id, Guid version, HappeningForm form, string who, CancellationToken cancel)
    {
        var read = await ReadAsync(form, cancel);
        return read.Value is var (_, entry)
            ? await DoneAsync(await new CorrectHappening(_book.Book).RunAsync(new(id), version, entry, who, cancel), cancel)
            : read.Problems.ToArray();
    }

    /// <summary>Takes it back.</summary>
    public async Task<Answer<DeedLine>> WithdrawAsync(Guid id, string who, CancellationToken cancel) =>
        await DoneAsync(await new WithdrawHappening(_book.Book).RunAsync(new(id), who, cancel), cancel);

    // Eggs are a clutch, by the males that were with her last.
    private async Task<Answer<DeedLine>> LaidAsync(HappeningForm form, string who, CancellationToken cancel)
    {
        var clutch = await _clutches.NewAsync(form.Animal, cancel);
        var written = await _clutches.RecordAsync(
            clutch with { Laid = string.IsNullOrWhiteSpace(form.When) ? clutch.Laid : form.When, GoodEggs = form.Amount, Sire = string.IsNullOrWhiteSpace(form.Mate) ? clutch.Sire : form.Mate, Notes = form.Text },
            who,
            cancel);
        return written.Value?.Deed is { } deed ? deed : written.Problems.Select(p => p with
        {
            Where = p.Where switch
            {
                "eggs" => "amount",
                "laid" => "when",
                "dam" => "animal",
                "sire" => "mate",
                _ => p.Where,
            },
        }).ToArray();
    }

    private async Task<Answer<Tuple<AnimalId, HappeningEntry>>> ReadAsync(HappeningForm form, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        HappeningKind? kind = string.IsNullOrWhiteSpace(form.Kind) ? Missing("kind", "It is not said what happened.") : ListHappenings.Kind(form.Kind, problems);
        var when = string.IsNullOrWhiteSpace(form.When)
            ? DateRange.On(DateOnly.FromDateTime(_clock.GetLocalNow().DateTime))
            : AnimalForms.Date("when", form.When, problems);
        double? amount = null;
        if (!string.IsNullOrWhiteSpace(form.Amount))
        {
            if (DecimalText.Read(form.Amount) is { } number)
            {
                amount = number;
            }
            else
            {
                problems.Add(new("amount", $"\"{form.Amount.Trim()}\" is no number. Write it as 1450 or 62.5, with nothing between thousands."));
            }
        }

        var animal = await TagAsync("animal", form.Animal);
        AnimalId? mate = string.IsNullOrWhiteSpace(form.Mate) || kind == HappeningKind.Laid ? null : await TagAsync("mate", form.Mate);
        ClutchId? clutch = null;
        if (!string.IsNullOrWhiteSpace(form.Clutch))
        {
            var found = await new Stock.Clutches.ListClutches(_book.Book).FindAsync(null, form.Clutch, cancel);
            problems.AddRange(found.IsDone ? [] : Refusals.Of("clutch", found.Problem));
            clutch = found.Value?.Clutch.ClutchId;
        }

        return problems.Count > 0
            ? problems.ToArray()
            : Tuple.Create(animal!.Value, new HappeningEntry { Kind = kind!.Value, When = when!, Amount = amount, MateId = mate, ClutchId = clutch, Text = form.Text ?? string.Empty });

        HappeningKind? Missing(string where, string text)
        {
            problems.Add(new(where, text));
            return null;
        }

        async Task<AnimalId?> TagAsync(string where, string tag)
        {
            if (string.IsNullOrWhiteSpace(tag))
            {
                problems.Add(new(where, "The animal is not named. Write its tag."));
                return null;
            }

            var found = await Find.ByTagAsync(_book, tag.Trim(), cancel);
            problems.AddRange(found.Problems.Select(p => p with { Where = where }));
            return found.Value?.Animal.AnimalId;
        }
    }

    private async Task<Answer<DeedLine>> DoneAsync(Outcome<Happening> done, CancellationToken cancel)
    {
        if (done.IsDone)
        {
            return (await _deeds.RunAsync(null, 1, cancel))[0];
        }

        return done.Problem is HappeningProblem.Refused refused
            ? [.. refused.Problems.Select(p => new AskedWrongly(Where(p), ProblemWords.Say(p).ToString()))]
            : Refusals.Of("kind", done.Problem);
    }

    private static string Where(HappeningProblem problem) => problem switch
    {
        HappeningProblem.InTheFuture or HappeningProblem.BeforeItHatched or HappeningProblem.BeforeItWasLaid => "when",
        HappeningProblem.AmountNotFitting => "amount",
        HappeningProblem.MateNotFitting or HappeningProblem.MateNotFound or HappeningProblem.NoPair => "mate",
        HappeningProblem.TextNotFitting => "text",
        HappeningProblem.ClutchNotFitting or HappeningProblem.ClutchNotFound => "clutch",
        _ => "kind",
    };
}
