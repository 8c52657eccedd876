using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Clutchwright.Stock.History;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Backups;

/// <summary>Goes through the history from the first deed to the last: each change must begin where the one before left its record, and
/// the last must leave it as it is now. Of each record a digest is kept in memory, not the record.</summary>
internal sealed class HistoryReplay(BookMoment moment)
{
    private const int DeedsAtOnce = 200;
    private const int RecordsAtOnce = 500;

    private readonly Dictionary<(RecordKind Kind, Guid Id), Last> _last = [];
    private readonly List<string> _found = [];

    /// <returns>What does not fit; at most <see cref="BookCheck.MostTold"/> are told.</returns>
    public async Task<IReadOnlyList<string>> RunAsync(CancellationToken cancellation)
    {
        await ReplayAsync(cancellation);
        await CompareAsync(cancellation);
        foreach (var kind in Enum.GetValues<RecordKind>())
        {
            var rows = await moment.CountAsync($"SELECT count(*) FROM {BookTable.Quoted(TableOf(kind))}", cancellation);
            var known = _last.LongCount(l => l.Key.Kind == kind && l.Value.State is not null);
            if (rows != known)
            {
                Tell($"{TableOf(kind)}: {rows} records, {known} by the history");
            }
        }

        return _found;
    }

    private async Task ReplayAsync(CancellationToken cancellation)
    {
        long last = 0;
        while (true)
        {
            var after = new DeedId(last);
            var deeds = await moment.Db.Deeds.AsNoTracking().Include(d => d.Changes)
                .Where(d => d.DeedId > after).OrderBy(d => d.DeedId).Take(DeedsAtOnce).ToListAsync(cancellation);
            if (deeds.Count == 0)
            {
                return;
            }

            foreach (var deed in deeds)
            {
                if (deed.DeedId.Number != last + 1)
                {
                    Tell($"deed {deed.DeedId} comes after deed {last}");
                }

                last = deed.DeedId.Number;
                Replay(deed);
            }
        }
    }

    private void Replay(Deed deed)
    {
        if (deed.Changes.Count == 0)
        {
            Tell($"deed {deed.DeedId} changed nothing");
        }

        var number = 0;
        foreach (var change in deed.Changes.OrderBy(c => c.Number))
        {
            if (change.Number != ++number)
            {
                Tell($"deed {deed.DeedId}: a change is missing before change {change.Number}");
                number = change.Number;
            }

            var key = (change.Kind, change.RecordId);
            var known = _last.GetValueOrDefault(key);
            if (!SameState(known?.State, Digest(change.Kind, change.Before)))
            {
                Tell($"deed {deed.DeedId}: {change.Label} was not as {(known is null ? "a record without history" : $"deed {known.Deed} left it")}");
            }

            _last[key] = new(Digest(change.Kind, change.After), deed.DeedId, change.Label);
        }
    }

    private async Task CompareAsync(CancellationToken cancellation)
    {
        foreach (var records in _last.Chunk(RecordsAtOnce))
        {
            Change[] asked = [.. records.Select(r => new Change(r.Value.Deed, 1, r.Key.Kind, r.Key.Id, r.Value.Label, null, null))];
            var now = await CurrentRecords.LoadAsync(moment.Db, asked, cancellation);
            foreach (var (record, change) in records.Zip(asked))
            {
                if (!SameState(record.Value.State, Digest(change.Kind, now.StateOf(change))))
                {
                    Tell($"{change.Label} is not as deed {record.Value.Deed} left it");
                }
            }

            moment.Db.ChangeTracker.Clear();
        }
    }

    private static byte[]? Digest(RecordKind kind, string? json) =>
        Snapshots.Rewrite(kind, json) is { } text ? SHA256.HashData(Encoding.UTF8.GetBytes(text)) : null;

    private static bool SameState(byte[]? one, byte[]? other) =>
        one is null ? other is null : other is not null && one.AsSpan().SequenceEqual(other);

    private static string TableOf(RecordKind kind) => kind switch
    {
        RecordKind.Animal => "Animals",
        RecordKind.Statement => "Statements",
        RecordKind.Season => "Seasons",
        RecordKind.Route => "Routes",
        RecordKind.Happening => "Happenings",
        RecordKind.Clutch => "Clutches",
        RecordKind.Incubator => "Incubators",
        RecordKind.Reading => "Readings",
        RecordKind.Photo => "Photos",
        RecordKind.Setting => "Settings",
    };

    private void Tell(FormattableString what)
    {
        if (_found.Count < BookCheck.MostTold)
        {
            _found.Add(what.ToString(CultureInfo.InvariantCulture));
        }
    }

    private sealed record Last(byte[]? State, DeedId Deed, string Label);
}
