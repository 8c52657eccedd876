using System.IO.Compression;
using System.Text.RegularExpressions;
using Clutchwright.Desk.Photos;
using Clutchwright.Pictures;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Photos;

namespace Clutchwright.Desk.Importing;

/// <summary>A set of photos as it was read.</summary>
/// <param name="List">Its list; <c>null</c>: it has none that can be read.</param>
/// <param name="Photos">The pictures without a fault of their own.</param>
/// <param name="Problems">Everything wrong, in the order of the set.</param>
internal sealed record ReadPhotoSet(ChosenFile<PhotoField, PhotoListFile>? List, IReadOnlyList<SetPhoto> Photos, IReadOnlyList<PhotoSetProblem> Problems);

/// <summary>Reads a set of photos, one picture at a time.</summary>
internal sealed partial class PhotoSetReader(ImportMappings mappings)
{
    private readonly List<PhotoSetProblem> _problems = [];

    /// <param name="set">The set.</param>
    /// <param name="spool">Where prepared pictures wait; <c>null</c>: they are only looked at.</param>
    /// <param name="cancel">Stops between pictures.</param>
    public async Task<ReadPhotoSet> ReadAsync(PhotoSet set, PhotoSpool? spool, CancellationToken cancel)
    {
        using var archive = PhotoArchive.Open(set.Content, out var whole);
        if (archive is null)
        {
            return new(null, [], [new(set.Name, whole!)]);
        }

        var names = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var list = await ListAsync(archive, set.Mapping, cancel);
        var said = Said(archive, list);
        var photos = new List<SetPhoto>();
        foreach (var entry in archive.Entries.Where(e => !IsList(e)))
        {
            cancel.ThrowIfCancellationRequested();
            if (!names.Add(entry.FullName))
            {
                _problems.Add(new(entry.FullName, "There are two files of this name in the ZIP file. Give one another name."));
            }
            else if (Read(entry, said.GetValueOrDefault(entry.FullName), spool) is { } photo)
            {
                photos.Add(photo);
            }
        }

        if (photos.Count == 0 && _problems.Count == 0)
        {
            _problems.Add(new(set.Name, "There is no picture in it."));
        }

        return new(list, photos, _problems);
    }

    private static bool IsList(ZipArchiveEntry entry) => string.Equals(PhotoArchive.NameOf(entry.FullName), PhotoArchive.ListName, StringComparison.OrdinalIgnoreCase);

    private async Task<ChosenFile<PhotoField, PhotoListFile>?> ListAsync(PhotoArchive archive, IReadOnlyDictionary<string, string?>? mapping, CancellationToken cancel)
    {
        ZipArchiveEntry[] lists = [.. archive.Entries.Where(IsList)];
        foreach (var again in lists.Skip(1))
        {
            _problems.Add(new(again.FullName, $"There is a second {PhotoArchive.ListName}. One says it all."));
        }

        if (lists.Length == 0)
        {
            return null;
        }

        var bytes = PhotoArchive.Read(lists[0], out var problem);
        if (problem is not null)
        {
            _problems.Add(new(lists[0].FullName, problem));
            return null;
        }

        var read = await ColumnChoice.ReadAsync(
            ImportPhotoSet.Kind, PhotoListFile.Fields, fields => PhotoListFile.ReadAsync(new MemoryStream(bytes, writable: false), fields, cancel), mapping, mappings, cancel);
        _problems.AddRange(read.Problems.Select(p => new PhotoSetProblem(PhotoArchive.ListName, p.Text)));
        _problems.AddRange(read.File.Problems.Select(p => new PhotoSetProblem(
            p.Row == 0 ? PhotoArchive.ListName : p.Column is null ? $"{PhotoArchive.ListName}, row {p.Row}" : $"{PhotoArchive.ListName}, row {p.Row}, {p.Column}",
            ProblemWords.Say(p.Problem).ToString())));
        return read;
    }

    // By whole name, or by the name without folders where only one file bears it.
    private Dictionary<string, PhotoRow> Said(PhotoArchive archive, ChosenFile<PhotoField, PhotoListFile>? list)
    {
        var said = new Dictionary<string, PhotoRow>(StringComparer.OrdinalIgnoreCase);
        var byName = archive.Entries.Where(e => !IsList(e)).ToLookup(e => PhotoArchive.NameOf(e.FullName), StringComparer.OrdinalIgnoreCase);
        var byWhole = archive.Entries.Where(e => !IsList(e)).ToLookup(e => e.FullName, StringComparer.OrdinalIgnoreCase);
        foreach (var row in list?.File.Rows ?? [])
        {
            var where = $"{PhotoArchive.ListName}, row {row.Row}";
            ZipArchiveEntry[] meant = [.. byWhole[row.File]];
            if (meant.Length == 0)
            {
                meant = [.. byName[row.File]];
            }

            if (meant.Length == 0)
            {
                _problems.Add(new(where, $"{row.File} is not in the ZIP file. Put it in, or take the row out."));
            }
            else if (meant.Length > 1)
            {
                _problems.Add(new(where, $"There are {meant.Length} files called {row.File}. Write its folder too."));
            }
            else if (!said.TryAdd(meant[0].FullName, row))
            {
                _problems.Add(new(where, $"Row {said[meant[0].FullName].Row} is about {row.File} already. Leave one of the two out."));
            }
        }

        return said;
    }

    private SetPhoto? Read(ZipArchiveEntry entry, PhotoRow? said, PhotoSpool? spool)
    {
        var bytes = PhotoArchive.Read(entry, out var problem);
        if (problem is null && bytes is [(byte)'P', (byte)'K', 3, 4, ..])
        {
            problem = "It is a ZIP file in the ZIP file. Put its pictures into this one.";
        }

        PictureProblem? unread = null;
        var picture = problem is null ? PictureReader.Prepare(bytes, out unread) : null;
        problem ??= unread is { } why ? PictureWords.Say(why) : null;
        var (tag, day) = said is null ? FromName(PhotoArchive.NameOf(entry.FullName)) : (said.Animal, said.Taken);
        if (problem is not null)
        {
            _problems.Add(new(entry.FullName, problem));
            return null;
        }

        day ??= picture!.Taken is { } camera ? DateRange.On(camera) : null;
        return new(entry.FullName, tag, day, said?.Note ?? string.Empty, Photo.DigestOf(picture!.Picture.Span), spool?.Add(picture) ?? NotKept);

        static PhotoEntry NotKept() => throw new InvalidOperationException("A set that is only looked at keeps no pictures.");
    }

    /// <summary>What a name says: TAG_2024-07-03.jpg, TAG_2024-07-03_2.jpg, or TAG.jpg.</summary>
    private static (string Tag, DateRange? Day) FromName(string name)
    {
        var stem = name.LastIndexOf('.') is > 0 and var dot ? name[..dot] : name;
        return Dated().Match(stem) is { Success: true } match && DateRange.Read(match.Groups["day"].Value) is { IsDone: true } day
            ? (match.Groups["tag"].Value, day.Value)
            : (stem, null);
    }

    [GeneratedRegex(@"^(?<tag>.+)_(?<day>[0-9]{4}(-[0-9]{2}(-[0-9]{2})?)?)(_[0-9]{1,3})?$", RegexOptions.ExplicitCapture | RegexOptions.Singleline, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Dated();
}
