using System.CommandLine;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Photos;
using Clutchwright.Desk.Words;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Photos;

/// <summary><c>photo</c>: the photos that are kept of an animal.</summary>
/// <remarks>A photo is named by the first letters of its digest, as the list shows them.</remarks>
internal static class PhotoCommand
{
    private const int ShownLetters = 8;

    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("photo", "The photos of an animal: list, keep, save to a file, take back.")
        {
            List(common, terminal),
            Add(common, terminal),
            Save(common, terminal),
            Edit(common, terminal),
            Withdraw(common, terminal),
        };

    private static Argument<string> Tag() => new("ID") { Description = "The animal." };

    private static Argument<string> Photo() => new("PHOTO") { Description = "The photo: the first letters of its digest, as the list shows them." };

    private static Option<string?> Taken() => new("--taken") { Description = "When it was taken, as roughly as you know it.", HelpName = "DATE" };

    private static Option<string?> Caption() => new("--caption") { Description = "What to say of it.", HelpName = "TEXT" };

    private static Command List(CommonOptions common, Terminal terminal)
    {
        var tag = Tag();
        var withdrawn = new Option<bool>("--withdrawn") { Description = "Those that were taken back instead." };
        var command = new Command("list", "The photos of an animal, the earliest first, with its age at each.") { tag, withdrawn };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var answer = await questions.GetRequiredService<AnimalPhotos>().ListAsync(asked.GetRequiredValue(tag), asked.GetValue(withdrawn), cancel);
            if (answer.Value is not { } photos)
            {
                return terminal.AskedWrongly(answer.Problems, _ => null);
            }

            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["photos"] = JsonShapes.Array(photos, Json) });
                return ExitCode.Answered;
            }

            var page = new Page(terminal);
            page.Heading($"Photos of {asked.GetRequiredValue(tag)}");
            if (photos.Count == 0)
            {
                page.Line(asked.GetValue(withdrawn) ? "None was taken back." : "None is kept yet.");
            }

            page.Table(
                ["photo", "taken", "age", "pixels", ""],
                [.. photos.Select(p => new[]
                {
                    Page.Seen(p.Digest[..ShownLetters]),
                    Page.Plain(p.Taken ?? "not known"),
                    Page.Plain(p.Age),
                    Page.Plain($"{p.Width} x {p.Height}"),
                    Page.Plain(p.Caption),
                })]);
            page.Send();
            return ExitCode.Answered;
        });
        return command;
    }

    private static Command Add(CommonOptions common, Terminal terminal)
    {
        var (tag, taken, caption, who) = (Tag(), Taken(), Caption(), StockCommand.Who());
        var file = new Argument<string>("FILE") { Description = "The photo as the camera made it." };
        var command = new Command("add", "Keep a photo of an animal: turned upright, made smaller, and without the place where it was taken.") { tag, file, taken, caption, who };
        command.SetAction(async (asked, cancel) =>
        {
            var path = asked.GetRequiredValue(file);
            if (!File.Exists(path))
            {
                return terminal.CouldNot($"There is no file {path}.");
            }

            var photo = new PhotoFile(Path.GetFileName(path), await File.ReadAllBytesAsync(path, cancel));
            await using var questions = common.Open(asked);
            return HistoryCommand.Done(common.IsJson(asked), terminal, await questions.GetRequiredService<AnimalPhotos>().AddAsync(
                asked.GetRequiredValue(tag), photo, asked.GetValue(taken), asked.GetValue(caption), asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Save(CommonOptions common, Terminal terminal)
    {
        var (tag, photo) = (Tag(), Photo());
        var file = new Argument<string>("FILE.jpg") { Description = "The file to write; one that is there already is refused." };
        var command = new Command("save", "Write the picture that is kept to a JPEG file.") { tag, photo, file };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var photos = questions.GetRequiredService<AnimalPhotos>();
            var found = await FindAsync(photos, asked.GetRequiredValue(tag), asked.GetRequiredValue(photo), isWithdrawn: false, cancel);
            if (found.Value is not { } known)
            {
                return terminal.AskedWrongly(found.Problems, _ => null);
            }

            var path = asked.GetRequiredValue(file);
            var picture = (await photos.PictureAsync(known.Digest, isSmall: false, cancel))!;
            try
            {
                await using var written = new FileStream(path, FileMode.CreateNew);
                await written.WriteAsync(picture, cancel);
            }
            catch (IOException) when (File.Exists(path))
            {
                return terminal.CouldNot($"There is a file {path} already; name another.");
            }

            if (common.IsJson(asked))
            {
                terminal.Send(Json(known));
            }
            else
            {
                terminal.Output.Write($"Written: {path}\n");
            }

            return ExitCode.Answered;
        });
        return command;
    }

    private static Command Edit(CommonOptions common, Terminal terminal)
    {
        var (tag, photo, taken, caption, who) = (Tag(), Photo(), Taken(), Caption(), StockCommand.Who());
        var command = new Command("edit", "Change the day and the words of a photo; what is not named stays.") { tag, photo, taken, caption, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var photos = questions.GetRequiredService<AnimalPhotos>();
            var found = await FindAsync(photos, asked.GetRequiredValue(tag), asked.GetRequiredValue(photo), isWithdrawn: false, cancel);
            return found.Value is { } known
                ? HistoryCommand.Done(common.IsJson(asked), terminal, await photos.DescribeAsync(
                    known.Id, known.Version, asked.GetValue(taken) ?? known.Taken, asked.GetValue(caption) ?? known.Caption, asked.GetRequiredValue(who), cancel))
                : terminal.AskedWrongly(found.Problems, _ => null);
        });
        return command;
    }

    private static Command Withdraw(CommonOptions common, Terminal terminal)
    {
        var (tag, photo, who) = (Tag(), Photo(), StockCommand.Who());
        var back = new Option<bool>("--back") { Description = "Bring back one that was taken back." };
        var command = new Command("withdraw", "Take a photo back; it stays in the book and can come back.") { tag, photo, back, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var photos = questions.GetRequiredService<AnimalPhotos>();
            var isBack = asked.GetValue(back);
            var found = await FindAsync(photos, asked.GetRequiredValue(tag), asked.GetRequiredValue(photo), isBack, cancel);
            if (found.Value is not { } known)
            {
                return terminal.AskedWrongly(found.Problems, _ => null);
            }

            var by = asked.GetRequiredValue(who);
            return HistoryCommand.Done(common.IsJson(asked), terminal, isBack ? await photos.RestoreAsync(known.Id, by, cancel) : await photos.WithdrawAsync(known.Id, by, cancel));
        });
        return command;
    }

    private static async Task<Answer<PhotoWords>> FindAsync(AnimalPhotos photos, string tag, string digest, bool isWithdrawn, CancellationToken cancel)
    {
        var answer = await photos.ListAsync(tag, isWithdrawn, cancel);
        if (answer.Value is not { } all)
        {
            return answer.Problems.ToArray();
        }

        var named = all.Where(p => p.Digest.StartsWith(digest.Trim(), StringComparison.OrdinalIgnoreCase)).ToArray();
        var there = all.Count == 0 ? "none" : string.Join(", ", all.Select(p => p.Digest[..ShownLetters]));
        return named.Length == 1
            ? named[0]
            : new AskedWrongly("photo", $"{(named.Length == 0 ? "No photo" : "More than one photo")} of {tag} begins with '{digest}'. {(isWithdrawn ? "Taken back" : "There")}: {there}.");
    }

    private static JsonObject Json(PhotoWords photo) => new()
    {
        ["digest"] = photo.Digest,
        ["taken"] = photo.Taken,
        ["ageMonths"] = photo.AgeMonths,
        ["stage"] = photo.Stage,
        ["width"] = photo.Width,
        ["height"] = photo.Height,
        ["caption"] = photo.Caption,
    };
}
