using System.Text.Json;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Settings;

namespace Clutchwright.Desk.Clutches;

/// <summary>How are clutches and hatchlings called?</summary>
public sealed class IdSchemes
{
    private const string OfClutches = "clutch-ids";
    private const string OfHatchlings = "hatchling-ids";

    private readonly OpenBook _book;
    private readonly ListDeeds _deeds;

    internal IdSchemes(OpenBook book, ListDeeds deeds) => (_book, _deeds) = (book, deeds);

    /// <summary>The schemes as they are set.</summary>
    public async Task<(IdScheme Clutches, IdScheme Hatchlings)> ReadAsync(CancellationToken cancel)
    {
        var kept = (await new FindSetting(_book.Book).RunAsync([OfClutches, OfHatchlings], cancel)).Expect();
        return (Read(OfClutches, IdScheme.UsualOfClutches), Read(OfHatchlings, IdScheme.UsualOfHatchlings));

        IdScheme Read(string name, string usual) =>
            IdScheme.Read(kept.TryGetValue(name, out var json) ? JsonSerializer.Deserialize<string>(json) ?? usual : usual, name == OfClutches, out _)
            ?? IdScheme.Read(usual, name == OfClutches, out _)!;
    }

    /// <summary>Sets how clutches, or hatchlings, are called from now on.</summary>
    public async Task<Answer<DeedLine>> SetAsync(bool isOfClutches, string text, string who, CancellationToken cancel)
    {
        if (IdScheme.Read(text, isOfClutches, out var problem) is not { } scheme)
        {
            return new AskedWrongly(isOfClutches ? "clutches" : "hatchlings", problem!);
        }

        var done = await new KeepSetting(_book.Book).RunAsync(
            isOfClutches ? OfClutches : OfHatchlings,
            JsonSerializer.Serialize(scheme.Text),
            $"{(isOfClutches ? "Clutches" : "Hatchlings")} are called {scheme.Text}",
            who,
            cancel);
        return done.IsDone ? (await _deeds.RunAsync(null, 1, cancel))[0] : Refusals.Of("scheme", done.Problem);
    }
}
