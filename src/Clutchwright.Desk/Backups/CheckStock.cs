using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock.Backups;

namespace Clutchwright.Desk.Backups;

/// <summary>Is the book whole?</summary>
public sealed class CheckStock
{
    private readonly OpenBook _book;

    internal CheckStock(OpenBook book) => _book = book;

    /// <summary>Looks through all of it, which takes a while for a large one.</summary>
    public async Task<Answer<CheckAnswer>> RunAsync(CancellationToken cancel)
    {
        var found = await Task.Run(() => new CheckBook(_book.Book).RunAsync(cancel), cancel);
        return found.IsDone
            ? new CheckAnswer(
                BookAnswer.Of(found.Value.Contents),
                [
                    ("the file and the rules of its tables", found.Value.Damage),
                    ("links between records", found.Value.Orphans),
                    ("the history leads to every record as it is", found.Value.History),
                ])
            : Refusals.Of("book", found.Problem);
    }
}
