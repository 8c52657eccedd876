using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;

namespace Clutchwright.Stock.Settings;

/// <summary>Keeps a setting in the book, in place of what was kept under its name before.</summary>
public sealed class KeepSetting(Book book)
{
    /// <param name="name">Lower-case letters and hyphens, as <c>label-size</c>.</param>
    /// <param name="value">JSON.</param>
    /// <param name="words">What is set, for the history: <c>Set the size of labels to 50 x 25 mm</c>.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancellation">Stops before anything is written.</param>
    /// <returns>The setting as it is kept. Nothing is written, and no deed done, where it was so already.</returns>
    public Task<Outcome<KeptSetting>> RunAsync(string name, string value, string words, string who, CancellationToken cancellation) =>
        book.WriteAsync<KeptSetting>(
            async db =>
            {
                if (KeptSetting.WhyNot(name, value) is { } problem)
                {
                    return problem;
                }

                var known = await db.Settings.SingleOrDefaultAsync(s => s.Name == name, cancellation);
                if (known is null)
                {
                    known = new(SettingId.New(), name, value);
                    db.Settings.Add(known);
                }
                else
                {
                    known.Change(value);
                }

                await db.RecordAsync(who, words, book.Now, cancellation);
                return known;
            },
            cancellation);
}
