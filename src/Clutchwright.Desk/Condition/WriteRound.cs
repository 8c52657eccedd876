using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Happenings;

namespace Clutchwright.Desk.Condition;

/// <summary>One animal of a feeding round, as it was marked.</summary>
/// <param name="Tag">The animal.</param>
/// <param name="What"><c>ate</c> or <c>refused</c>.</param>
public sealed record RoundMark(string Tag, string What);

/// <summary>What writing a feeding round down did.</summary>
/// <param name="Deed">The deed that undoing takes back as a whole; <c>null</c>: all of it stood in the book already.</param>
/// <param name="Written">How many animals were written down.</param>
/// <param name="Skipped">How many stood there already with the same of the same day.</param>
public sealed record RoundWritten(DeedLine? Deed, int Written, int Skipped);

/// <summary>Writes a feeding round down, in one deed.</summary>
public sealed class WriteRound
{
    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;

    internal WriteRound(OpenBook book, ListDeeds deeds, TimeProvider clock) => (_book, _deeds, _clock) = (book, deeds, clock);

    /// <summary>Writes it: all of it or, if one animal is wrong, nothing. What stands in the book already is passed over, so that a round
    /// that was sent twice, since the answer was lost, is written once.</summary>
    /// <param name="marks">Each animal once.</param>
    /// <param name="when">A date; empty: today.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<RoundWritten>> RunAsync(IReadOnlyList<RoundMark> marks, string? when, string who, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var today = ConditionReckoning.Today(_clock);
        var day = string.IsNullOrWhiteSpace(when) ? DateRange.On(today) : AnimalForms.Date("when", when, problems);
        if (marks.Count == 0)
        {
            problems.Add(new("round", "No animal is marked. Mark what ate and what refused."));
        }

        var here = (await ConditionReckoning.CareAsync(_book.Book, null, day?.Earliest ?? today, cancel)).ToDictionary(c => c.Tag, StringComparer.OrdinalIgnoreCase);
        var (lines, tags, skipped) = (new List<RoundLine>(), new List<string>(), 0);
        foreach (var mark in marks)
        {
            HappeningKind? kind = mark.What switch { "ate" => HappeningKind.Fed, "refused" => HappeningKind.FoodRefused, _ => null };
            if (!here.TryGetValue(mark.Tag.Trim(), out var animal))
            {
                problems.Add(new(mark.Tag, $"{mark.Tag} is not in the room.", DidYouMean: NearWords.Of(mark.Tag, here.Keys)));
            }
            else if (kind is not { } happened)
            {
                problems.Add(new(mark.Tag, $"\"{mark.What}\" is nothing that a round writes down. Write ate or refused."));
            }
            else if (day is not null && animal.Events.Any(e => e.Kind == happened && e.Day == day.Latest))
            {
                skipped++;
            }
            else if (day is not null)
            {
                lines.Add(new(animal.AnimalId, new HappeningEntry { Kind = happened, When = day }));
                tags.Add(animal.Tag);
            }
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        if (lines.Count == 0)
        {
            return new RoundWritten(null, 0, skipped);
        }

        var done = await new RecordRound(_book.Book).RunAsync(lines, who, cancel);
        return done switch
        {
            { IsDone: true } => new RoundWritten((await _deeds.RunAsync(null, 1, cancel))[0], lines.Count, skipped),
            { Problem: HappeningProblem.RoundRefused refused } => refused.Lines.Select(l => new AskedWrongly(tags[l.Index], ProblemWords.Say(l.Problem).ToString())).ToArray(),
            _ => Refusals.Of("round", done.Problem),
        };
    }
}
