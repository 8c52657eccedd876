using Clutchwright.Desk.Opened;
using Clutchwright.Stock.Seasons;

namespace Clutchwright.Desk.Season;

/// <summary>What does the keeper want of a season, and what was chosen for it?</summary>
public sealed class ShowSeason
{
    private readonly OpenBook _book;
    private readonly KeptSeasons _kept;
    private readonly TimeProvider _clock;

    internal ShowSeason(OpenBook book, KeptSeasons kept, TimeProvider clock) => (_book, _kept, _clock) = (book, kept, clock);

    /// <summary>Answers.</summary>
    /// <param name="year">The year in which its clutches hatch; <c>null</c>: the season at hand.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<SeasonKept> RunAsync(int? year, CancellationToken cancel)
    {
        var asked = year ?? SeasonYear.At(_clock);
        var years = (await new ListSeasons(_book.Book).RunAsync(cancel)).Expect().Select(s => s.Year).ToArray();
        return await _kept.FindAsync(asked, cancel) is var (season, goals, notes)
            ? new(asked, season.Version, KeptSeasons.Write(goals), years, notes)
            : new(asked, null, null, years, []);
    }
}
