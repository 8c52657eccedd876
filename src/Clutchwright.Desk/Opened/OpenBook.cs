using Clutchwright.Stock.Storage;

namespace Clutchwright.Desk.Opened;

/// <summary>The keeper's book, open for as long as the desk is.</summary>
internal sealed class OpenBook(Book book) : IDisposable
{
    public Book Book { get; } = book;

    public void Dispose() => Book.Dispose();
}
