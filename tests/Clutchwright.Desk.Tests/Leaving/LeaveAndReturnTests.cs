using System.IO.Compression;
using Clutchwright.Desk.Backups;
using Clutchwright.Desk.Leaving;
using Clutchwright.Desk.Photos;
using Clutchwright.Desk.Tests.Testing;
using SkiaSharp;

namespace Clutchwright.Desk.Tests.Leaving;

/// <summary>The demo stock with photos leaves and comes back, and can be worked with.</summary>
public sealed class LeaveAndReturnTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("clutchwright-leaving-").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Return_DemoWithPhotos_IsAsItWas()
    {
        using var desk = await TestDesk.WithDemoAsync();
        var tag = (await desk.AllAsync())[0].Tag;
        Assert.Empty((await desk.Get<AnimalPhotos>().AddAsync(tag, new("snake.jpg", Picture(900, 600)), "2025-05-03", "on a branch", TestDesk.Who, Cancel)).Problems);
        var file = Path.Combine(_folder, "book.zip");
        var left = (await desk.Get<LeaveBook>().RunAsync(file, Cancel)).Value!;
        using var other = new TestDesk();

        var preview = (await other.Get<ReturnBook>().PreviewAsync(new(file), Cancel)).Value!;
        var done = await other.Get<ReturnBook>().RunAsync(new(file), preview.Mark, isReplacing: false, TestDesk.Who, Cancel);

        Assert.Empty(done.Problems);
        Assert.Null(done.Value!.Before);
        Assert.True(preview.IsEmpty);
        Assert.Equal(left.Counts, preview.Counts);
        Assert.Equal(1, left.Pictures);
        Assert.Equal(await desk.ExportAsync(), await other.ExportAsync());
        var (before, after) = (await PhotoAsync(desk, tag), await PhotoAsync(other, tag));
        Assert.Equal(before.Digest, after.Digest);
        Assert.Equal(await desk.Get<AnimalPhotos>().PictureAsync(before.Digest, isSmall: false, Cancel), await other.Get<AnimalPhotos>().PictureAsync(after.Digest, isSmall: false, Cancel));
        using var small = SKBitmap.Decode((await other.Get<AnimalPhotos>().PictureAsync(after.Digest, isSmall: true, Cancel))!);
        Assert.Equal((320, 213), (small.Width, small.Height));
        Assert.True((await other.Get<CheckStock>().RunAsync(Cancel)).Value!.IsSound);
        Assert.NotEmpty((await other.StateAsync()).Record.Animals);
    }

    [Fact]
    public async Task Return_SomethingDoneSinceThePreview_IsRefused()
    {
        using var desk = await TestDesk.WithAsync("id,sex\nA,m\n");
        var file = Path.Combine(_folder, "book.zip");
        await desk.Get<LeaveBook>().RunAsync(file, Cancel);
        var preview = (await desk.Get<ReturnBook>().PreviewAsync(new(file), Cancel)).Value!;
        await desk.ImportAsync("id,sex\nB,m\n");

        var answer = await desk.Get<ReturnBook>().RunAsync(new(file), preview.Mark, isReplacing: true, TestDesk.Who, Cancel);

        Assert.StartsWith("Something was done to the book meanwhile", Assert.Single(answer.Problems).Text, StringComparison.Ordinal);
        Assert.Equal(2, (await desk.AllAsync()).Count);
    }

    [Fact]
    public async Task Return_PictureThatIsNone_IsRefusedWithItsPlace()
    {
        using var desk = await TestDesk.WithAsync("id,sex\nA,m\n");
        await desk.Get<AnimalPhotos>().AddAsync("A", new("snake.jpg", Picture(40, 30)), "2025-05-03", "", TestDesk.Who, Cancel);
        var file = Path.Combine(_folder, "book.zip");
        await desk.Get<LeaveBook>().RunAsync(file, Cancel);
        await using (var zip = await ZipFile.OpenAsync(file, ZipArchiveMode.Update, Cancel))
        {
            zip.GetEntry("photos/A_2025-05-03.jpg")!.Delete();
            await using var entry = await zip.CreateEntry("photos/A_2025-05-03.jpg").OpenAsync(Cancel);
            await entry.WriteAsync("no picture"u8.ToArray(), Cancel);
        }

        using var other = new TestDesk();
        var answer = await other.Get<ReturnBook>().PreviewAsync(new(file), Cancel);

        Assert.Equal(
            ("photos/A_2025-05-03.jpg", "it is not the picture that was written: its length or digest is another."),
            (answer.Problems[0].Where, answer.Problems[0].Text));
    }

    private static async Task<PhotoWords> PhotoAsync(TestDesk desk, string tag) => Assert.Single((await desk.Get<AnimalPhotos>().ListAsync(tag, withdrawn: false, Cancel)).Value!);

    private static byte[] Picture(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height);
        bitmap.Erase(SKColors.SaddleBrown);
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        return data.ToArray();
    }
}
