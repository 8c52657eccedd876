using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Pictures;
using Clutchwright.Sheets.Pages;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.Photos;

namespace Clutchwright.Desk.Sheets;

/// <summary>All that sheets are made from.</summary>
internal sealed class SheetStock(OpenBook book, OpenCatalogue catalogue, StockBeliefs beliefs, TimeProvider clock)
{
    private readonly ProvenBeliefs _proven = new();

    public OpenCatalogue Catalogue => catalogue;

    public DateTimeOffset Now => clock.GetLocalNow();

    public DateOnly Today => DateOnly.FromDateTime(Now.DateTime);

    public Task<StockState> ReadAsync(CancellationToken cancel) => beliefs.ReadAsync(cancel);

    /// <summary>The words of labels of the stock as it is.</summary>
    public LabelText Words(StockState state, CancellationToken cancel) => new(catalogue, state, _proven.Of(state, cancel), Today);

    /// <summary>The animals of tags, in their order.</summary>
    public static IReadOnlyList<StockAnimal> Find(StockState state, IReadOnlyList<string> tags, List<AskedWrongly> problems)
    {
        var found = new List<StockAnimal>();
        foreach (var tag in tags.Where(t => !string.IsNullOrWhiteSpace(t)))
        {
            if (state.Find(tag) is { } animal)
            {
                found.Add(animal);
            }
            else
            {
                problems.Add(new("animal", $"The stock has no animal '{tag.Trim()}'.", DidYouMean: NearWords.Of(tag, state.Animals.Select(a => a.Animal.Tag))));
            }
        }

        if (found.Count == 0 && problems.Count == 0)
        {
            problems.Add(new("animal", "No animal is chosen. Name one at least by its tag."));
        }

        return found;
    }

    /// <summary>What happened to an animal, the latest first; no kinds: all.</summary>
    public async Task<IReadOnlyList<HappeningLine>> HappeningsAsync(AnimalId? animal, int most, CancellationToken cancel, params IReadOnlyList<HappeningKind> kinds) =>
        (await new Stock.Happenings.ListHappenings(book.Book).RunAsync(animal, kinds, most, cancel)).Expect();

    /// <summary>The photo of an animal that was taken last, as a part of its sheet; nothing: none is kept.</summary>
    /// <param name="animal">The animal.</param>
    /// <param name="isSmall">The small picture, where many go into one file.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<IReadOnlyList<SheetBlock>> PhotoAsync(Animal animal, bool isSmall, CancellationToken cancel)
    {
        var ask = new ListPhotos(book.Book);
        var kept = (await ask.RunAsync(animal.AnimalId, withdrawn: false, cancel)).Expect();
        if (kept is not [.., var end])
        {
            return [];
        }

        var last = kept.LastOrDefault(p => p.Taken is not null) ?? end;
        if ((await ask.PictureAsync(last.Digest, isSmall, cancel)).Value is not { } file || KeptPicture.Printable(file) is not { } picture)
        {
            return [];
        }

        var words = $"Photo of {SheetWords.Name(animal)}, {(last.Taken is { } taken ? $"taken {taken.Words}" : "day not known")}{(last.Caption.Length > 0 ? $": {last.Caption}" : string.Empty)}";
        return [new SheetBlock.Photo(new(last.Digest, last.Width, last.Height, picture, words))];
    }

    /// <summary>The clutches of the book, the one laid last first.</summary>
    public async Task<IReadOnlyList<ClutchLine>> ClutchesAsync(CancellationToken cancel) => (await new ListClutches(book.Book).RunAsync(binned: false, cancel)).Expect();

    /// <summary>The clutch of a tag.</summary>
    public async Task<ClutchLine?> ClutchAsync(string tag, List<AskedWrongly> problems, CancellationToken cancel)
    {
        var found = await new ListClutches(book.Book).FindAsync(null, tag, cancel);
        if (found.IsDone)
        {
            return found.Value;
        }

        problems.Add(new("clutch", $"The book has no clutch '{tag.Trim()}'.", DidYouMean: NearWords.Of(tag, (await ClutchesAsync(cancel)).Select(c => c.Clutch.Tag))));
        return null;
    }

    /// <summary>The address of an animal's page; tells what is wrong with the keeper's address.</summary>
    public static string? Address(string? link, string tag, List<AskedWrongly> problems)
    {
        if (string.IsNullOrWhiteSpace(link))
        {
            return null;
        }

        if (!Uri.TryCreate(link.Trim(), UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https") || uri.Host.Length == 0)
        {
            if (problems.TrueForAll(p => p.Where != "link"))
            {
                problems.Add(new("link", $"\"{link}\" is no address of a server. Write it as http://192.168.1.20:5417."));
            }

            return null;
        }

        return $"{uri.GetLeftPart(UriPartial.Path).TrimEnd('/')}/stock/animal/{Uri.EscapeDataString(tag)}";
    }
}
