using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Animals;

/// <summary>Finds animals by their tags for the deeds.</summary>
internal static class Find
{
    public static async Task<Answer<AnimalRecord>> ByTagAsync(OpenBook book, string tag, CancellationToken cancel)
    {
        var found = await new FindAnimal(book.Book).RunAsync(tag, cancel);
        return found.IsDone ? found.Value : Refusals.Of("tag", found.Problem)[0];
    }

    /// <summary>The latest animal in the bin that had this tag.</summary>
    public static async Task<AnimalId?> InBinAsync(OpenBook book, string tag, CancellationToken cancel)
    {
        var page = (await new Stock.Animals.ListAnimals(book.Book).RunAsync(
            new AnimalFilter { InBin = true, Text = tag, PageSize = AnimalFilter.MaxPageSize, Order = AnimalOrder.Added, IsDescending = true }, cancel)).Expect();
        return page.Animals.FirstOrDefault(a => string.Equals(a.Tag, tag.Trim(), StringComparison.OrdinalIgnoreCase))?.AnimalId;
    }
}
