using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Pictures;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Photos;

namespace Clutchwright.Desk.Photos;

/// <summary>How did an animal look over its life? The photos that are kept of it, and keeping them.</summary>
public sealed class AnimalPhotos
{
    private const double DaysAMonth = 30.44;

    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly ListDeeds _deeds;

    internal AnimalPhotos(OpenBook book, OpenCatalogue catalogue, ListDeeds deeds) => (_book, _catalogue, _deeds) = (book, catalogue, deeds);

    /// <summary>The photos of an animal, the earliest first.</summary>
    /// <param name="tag">The animal.</param>
    /// <param name="withdrawn">Those that were taken back instead.</param>
    /// <param name="cancel">Stops the question.</param>
    public async Task<Answer<IReadOnlyList<PhotoWords>>> ListAsync(string tag, bool withdrawn, CancellationToken cancel)
    {
        var found = await Find.ByTagAsync(_book, tag, cancel);
        return found.Value is { Animal: var animal }
            ? Answer.Of<IReadOnlyList<PhotoWords>>([.. (await new ListPhotos(_book.Book).RunAsync(animal.AnimalId, withdrawn, cancel)).Expect().Select(p => Words(animal, p))])
            : found.Problems.ToArray();
    }

    /// <summary>A picture as a JPEG file; <c>null</c>: none has this digest.</summary>
    public async Task<byte[]?> PictureAsync(string digest, bool isSmall, CancellationToken cancel) =>
        (await new ListPhotos(_book.Book).PictureAsync(digest, isSmall, cancel)).Value;

    /// <summary>Keeps a photo: turned upright, made smaller, and without the place where it was taken.</summary>
    /// <param name="tag">The animal.</param>
    /// <param name="file">The photo as the camera made it.</param>
    /// <param name="taken">When, in words; empty: as the camera wrote it, if it did.</param>
    /// <param name="caption">What to say of it; empty: nothing.</param>
    /// <param name="who">Who does it.</param>
    /// <param name="cancel">Stops before anything is written.</param>
    public async Task<Answer<DeedLine>> AddAsync(string tag, PhotoFile file, string? taken, string? caption, string who, CancellationToken cancel)
    {
        var found = await Find.ByTagAsync(_book, tag, cancel);
        var problems = new List<AskedWrongly>(found.Problems);
        var day = string.IsNullOrWhiteSpace(taken) ? null : AnimalForms.Date("taken", taken, problems);
        var picture = PictureReader.Prepare(file.Content, out var problem);
        if (problem is { } unread)
        {
            problems.Add(new("photo", $"{file.Name}: {PictureWords.Say(unread)}"));
        }

        if (problems.Count > 0)
        {
            return problems.ToArray();
        }

        day ??= picture!.Taken is { } camera ? DateRange.On(camera) : null;
        return await DoneAsync(
            await new AddPhoto(_book.Book).RunAsync(
                found.Value!.Animal.AnimalId, new(picture!.Picture, picture.Thumbnail, picture.Width, picture.Height, day, caption ?? string.Empty), who, cancel),
            cancel);
    }

    /// <summary>Says something else of a photo.</summary>
    public async Task<Answer<DeedLine>> DescribeAsync(Guid id, Guid version, string? taken, string? caption, string who, CancellationToken cancel)
    {
        var problems = new List<AskedWrongly>();
        var day = string.IsNullOrWhiteSpace(taken) ? null : AnimalForms.Date("taken", taken, problems);
        return problems.Count > 0
            ? problems.ToArray()
            : await DoneAsync(await new ChangePhoto(_book.Book).DescribeAsync(new(id), version, day, caption ?? string.Empty, who, cancel), cancel);
    }

    /// <summary>Takes a photo back.</summary>
    public async Task<Answer<DeedLine>> WithdrawAsync(Guid id, string who, CancellationToken cancel) =>
        await DoneAsync(await new ChangePhoto(_book.Book).WithdrawAsync(new(id), who, cancel), cancel);

    /// <summary>Brings back a photo that was taken back.</summary>
    public async Task<Answer<DeedLine>> RestoreAsync(Guid id, string who, CancellationToken cancel) =>
        await DoneAsync(await new ChangePhoto(_book.Book).RestoreAsync(new(id), who, cancel), cancel);

    private PhotoWords Words(Animal animal, Photo photo)
    {
        var months = photo.Taken is { } taken && animal.Hatched is { } hatched && taken.Latest >= hatched.Earliest
            ? (int?)Math.Max(0, Math.Floor((Middle(taken) - Middle(hatched)) / DaysAMonth))
            : null;
        return new(
            photo.PhotoId.Value,
            photo.Version,
            photo.Digest,
            photo.Width,
            photo.Height,
            photo.Taken?.ToText(),
            months,
            months is { } age ? StageAt(age) : null,
            photo.Caption);

        static double Middle(DateRange range) => (range.Earliest.DayNumber + range.Latest.DayNumber) / 2.0;
    }

    private string StageAt(int months) => Enum.GetValues<AgeStage>()
        .Where(stage => _catalogue.Catalogue.Stages.BeginsAt(stage) <= months)
        .Last()
        .ToString()
        .ToLowerInvariant();

    private async Task<Answer<DeedLine>> DoneAsync(Outcome<Photo> done, CancellationToken cancel) => done.IsDone
        ? (await _deeds.RunAsync(null, 1, cancel))[0]
        : Refusals.Of(done.Problem is PhotoProblem.CaptionInvalid ? "caption" : done.Problem is PhotoProblem.InTheFuture or PhotoProblem.BeforeItHatched ? "taken" : "photo", done.Problem);
}
