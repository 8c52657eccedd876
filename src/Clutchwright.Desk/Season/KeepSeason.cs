using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Season;

/// <summary>Keeps what is wanted of a season, and the keeper's own choices for it, in the book.</summary>
public sealed class KeepSeason
{
    private readonly OpenBook _book;
    private readonly KeptSeasons _kept;
    private readonly ListDeeds _deeds;

    internal KeepSeason(OpenBook book, KeptSeasons kept, ListDeeds deeds) => (_book, _kept, _deeds) = (book, kept, deeds);

    /// <summary>Keeps it in place of what was kept of that season; the deed is given back for undoing.</summary>
    /// <param name="year">The year in which its clutches hatch.</param>
    /// <param name="version">The <see cref="SeasonKept.Version"/> that the keeper saw.</param>
    /// <param name="goals">The goals file: JSON, as docs/how-to/season.md describes it.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> RunAsync(int year, Guid? version, NamedFile goals, string who, CancellationToken cancel)
    {
        var entry = await _kept.EntryAsync(year, version, goals, cancel);
        if (entry.Value is not { } season)
        {
            return entry.Problems.ToArray();
        }

        var done = await new Stock.Seasons.KeepSeason(_book.Book).RunAsync(season, who, cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : KeptSeasons.Refused(done.Problem);
    }
}
