using System.Globalization;
using Clutchwright.Stock;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Years;

/// <summary>Makes the book of the invented keeper. Every record is written through the book's own context, deed by deed with its history; only the checks of the
/// deeds are left out, and many deeds share a transaction. <c>book check</c> finds nothing in it.</summary>
internal static class YearsBook
{
    private const int DeedsATransaction = 2_000;
    private const int PhotosAYear = 500;

    /// <summary>Makes it, or takes the one made before on the same day.</summary>
    /// <returns>The data folder.</returns>
    public static async Task<string> MakeAsync(int years, DateOnly today, TextWriter told)
    {
        var folder = Path.Combine(Path.GetTempPath(), "clutchwright-years", string.Create(CultureInfo.InvariantCulture, $"{years}-{today:yyyyMMdd}"));
        if (File.Exists(Path.Combine(folder, "made")))
        {
            return folder;
        }

        if (Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        var lines = new Diary(new Keeping(years, today, seed: 1), seed: 2, PhotosAYear).Lines();
        await told.WriteLineAsync(string.Create(CultureInfo.InvariantCulture, $"making {years} years: {lines.Count:N0} deeds"));
        var opened = await Book.OpenAsync(folder, TimeProvider.System, CancellationToken.None);
        using var book = opened.IsDone ? opened.Value : throw new InvalidOperationException(opened.Problem.ToString());
        foreach (var some in lines.Chunk(DeedsATransaction))
        {
            var done = await book.WriteAsync<object>(
                async db =>
                {
                    foreach (var line in some)
                    {
                        var words = await line.Write(db);
                        await db.RecordAsync("keeper", words, line.When, CancellationToken.None);
                        db.ChangeTracker.Clear();
                    }

                    return Outcome.Of<object>(some);
                },
                CancellationToken.None);
            if (!done.IsDone)
            {
                throw new InvalidOperationException(done.Problem.ToString());
            }

        }

        await File.WriteAllTextAsync(Path.Combine(folder, "made"), "");
        return folder;
    }
}
