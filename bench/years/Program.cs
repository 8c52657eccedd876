using System.Globalization;
using Clutchwright.Years;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
await Server.BuildAsync();
var today = DateOnly.FromDateTime(TimeProvider.System.GetUtcNow().UtcDateTime).AddDays(-1);
if (args is ["growth", var picture])
{
    var all = new List<Measured>();
    foreach (var years in new[] { 1, 2, 5, 10 })
    {
        all.Add(await MeasureAsync(years, null));
    }

    await File.WriteAllTextAsync(picture, Growth.Draw(all));
    return;
}

await MeasureAsync(args is [var asked, ..] ? int.Parse(asked, CultureInfo.InvariantCulture) : 10, args is [_, var page] ? page : null);

async Task<Measured> MeasureAsync(int years, string? only)
{
    var measured = await Measured.OfAsync(await YearsBook.MakeAsync(years, today, Console.Error), years, only);
    measured.Tell(Console.Out);
    return measured;
}
