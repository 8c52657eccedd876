using Clutchwright.Desk.Opened;

namespace Clutchwright.Desk.Animals;

/// <summary>Where does the stock lie?</summary>
public sealed class ShowPlace
{
    private readonly OpenBook _book;

    internal ShowPlace(OpenBook book) => _book = book;

    /// <summary>The file, or the database and its server, in words; never with a password.</summary>
    public string Run() => _book.Book.Place;
}
