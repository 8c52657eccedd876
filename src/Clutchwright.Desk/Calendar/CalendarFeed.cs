using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Settings;

namespace Clutchwright.Desk.Calendar;

/// <summary>The calendar for other programs, at an address that only those know who were told it.</summary>
public sealed class CalendarFeed
{
    private const string Setting = "calendar-feed";
    private const int TokenBytes = 20;

    private readonly OpenBook _book;
    private readonly ShowCalendar _calendar;
    private readonly ListDeeds _deeds;
    private readonly TimeProvider _clock;

    internal CalendarFeed(OpenBook book, ShowCalendar calendar, ListDeeds deeds, TimeProvider clock) => (_book, _calendar, _deeds, _clock) = (book, calendar, deeds, clock);

    /// <summary>The secret part of the address; <c>null</c>: none has been made, and there is no such address.</summary>
    public async Task<string?> TokenAsync(CancellationToken cancel)
    {
        var kept = (await new FindSetting(_book.Book).RunAsync([Setting], cancel)).Expect();
        return kept.TryGetValue(Setting, out var json) ? JsonSerializer.Deserialize<Address>(json)?.Token : null;
    }

    /// <summary>Makes a new secret part; the address with the one before answers no more.</summary>
    public async Task<DeedLine> RenewAsync(string who, CancellationToken cancel)
    {
        var token = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(TokenBytes));
        (await new KeepSetting(_book.Book).RunAsync(Setting, JsonSerializer.Serialize(new Address(token)), "Made a new address of the calendar feed", who, cancel)).Expect();
        return (await _deeds.RunAsync(null, 1, cancel))[0];
    }

    /// <summary>Takes the address away.</summary>
    public async Task<DeedLine> CloseAsync(string who, CancellationToken cancel)
    {
        (await new KeepSetting(_book.Book).RunAsync(Setting, JsonSerializer.Serialize(new Address(null)), "Took the address of the calendar feed away", who, cancel)).Expect();
        return (await _deeds.RunAsync(null, 1, cancel))[0];
    }

    /// <summary>Whether a token is the one of the address. Takes the same time whichever letter is wrong.</summary>
    public async Task<bool> IsOpenToAsync(string token, CancellationToken cancel) =>
        await TokenAsync(cancel) is { } kept && CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(kept), Encoding.UTF8.GetBytes(token));

    /// <summary>The calendar of the year ahead, as an iCalendar file.</summary>
    public async Task<Answer<string>> RunAsync(CancellationToken cancel)
    {
        var answer = await _calendar.RunAsync(null, CalendarFile.FeedDays, asOnThatDay: false, cancel);
        return answer.Value is { } calendar ? CalendarFile.Write(calendar, _clock.GetUtcNow()) : answer.Problems.ToArray();
    }

    private sealed record Address(string? Token);
}
