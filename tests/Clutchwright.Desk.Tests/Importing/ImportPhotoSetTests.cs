using System.Text;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Photos;
using Clutchwright.Desk.Tests.Testing;

namespace Clutchwright.Desk.Tests.Importing;

public class ImportPhotoSetTests
{
    private const string Stock = "id,sex,hatched\nF1,f,2024-07-01\nM_2,m,\n";

    [Fact]
    public async Task RunAsync_NamesAndList_KeepsEachOnceInOneDeed()
    {
        using var desk = await TestDesk.WithAsync(Stock);
        var zip = FuzzSet.Zip(
        [
            ("F1_2025-01-02.jpg", FuzzSet.Picture(1)),
            ("in/F1_2025-01-02_2.png", FuzzSet.Picture(3)),
            ("M_2.jpg", FuzzSet.Picture(2)),
            ("dsc100.jpg", FuzzSet.Picture(4)),
            ("photos.csv", Encoding.UTF8.GetBytes("file,animal,date,note\ndsc100.jpg,f1,about March 2025,=shy\n")),
            ("__MACOSX/._dsc100.jpg", [1, 2]),
        ]);

        var preview = await PreviewAsync(desk, zip);
        var done = await RunAsync(desk, zip);

        Assert.Empty(preview.Problems);
        Assert.Equal(
            [("F1_2025-01-02.jpg", "F1", "2025-01-02", ""), ("in/F1_2025-01-02_2.png", "F1", "2025-01-02", ""), ("M_2.jpg", "M_2", null, ""), ("dsc100.jpg", "f1", "about March 2025", "=shy")],
            preview.Photos.Select(p => (p.File, p.Tag, p.Taken, p.Note)));
        Assert.Equal(4, done.Value!.Added);
        Assert.Equal("Imported 4 photos from set.zip", (await desk.Get<ListDeeds>().RunAsync(null, 1, TestDesk.Cancel))[0].Words);
        Assert.Equal(["2025-01-02", "2025-01-02", "about March 2025"], await DaysAsync(desk, "F1"));
        Assert.All((await PreviewAsync(desk, zip)).Photos, p => Assert.True(p.IsSkipped));

        Assert.Empty((await desk.Get<UndoDeed>().RunAsync(done.Value.Deed, TestDesk.Who, TestDesk.Cancel)).Problems);
        Assert.Empty(await DaysAsync(desk, "F1"));
    }

    /// <summary>An entry beside a good one, and what is said of it.</summary>
    public static TheoryData<string, byte[], string> Faults => new()
    {
        { "../F1_2025-01-03.jpg", FuzzSet.Picture(1), "leads out" },
        { "/F1_2025-01-03.jpg", FuzzSet.Picture(1), "leads out" },
        { "a\\F1_2025-01-03.jpg", FuzzSet.Picture(1), "leads out" },
        { "f1_2025-01-02.JPG", FuzzSet.Picture(1), "two files of this name" },
        { "F1_2025-01-03.jpg", FuzzSet.Picture(0), "same picture as F1_2025-01-02.jpg" },
        { "F1_2025-01-03.jpg", new byte[2_000_000], "no picture does" },
        { "F1_2025-01-03.jpg", "no picture"u8.ToArray(), "no picture that can be read" },
        { "F1_2025-01-03.jpg", FuzzSet.Picture(1)[..60], "no picture that can be read" },
        { "F1_2025-01-03.jpg", FuzzSet.Zip([("x", [1])]), "ZIP file in the ZIP file" },
        { "F9_2025-01-03.jpg", FuzzSet.Picture(1), "No animal has the id F9" },
        { "F1_2023-01-03.jpg", FuzzSet.Picture(1), "hatched 2024-07-01, after 2023-01-03" },
        { "F1_2031-01-03.jpg", FuzzSet.Picture(1), "yet to come" },
        { "photos.csv", "file,animal\nF1_2025-01-02.jpg,\n"u8.ToArray(), "The animal is missing" },
        { "photos.csv", "file,animal\nx.jpg,F1\n"u8.ToArray(), "x.jpg is not in the ZIP file" },
        { "photos.csv", "file\nx.jpg\n"u8.ToArray(), "No column holds the animal" },
        { "in/photos.csv", [0xFF], "not UTF-8" },
    };

    [Theory]
    [MemberData(nameof(Faults), DisableDiscoveryEnumeration = true)]
    public async Task RunAsync_EntryWrong_IsNamedAndNothingIsKept(string name, byte[] bytes, string why)
    {
        using var desk = await TestDesk.WithAsync(Stock);
        var zip = FuzzSet.Zip([("F1_2025-01-02.jpg", FuzzSet.Picture(0)), (name, bytes)]);

        var preview = await PreviewAsync(desk, zip);
        var done = await RunAsync(desk, zip);

        Assert.Contains(why, Assert.Single(preview.Problems).Text, StringComparison.Ordinal);
        Assert.StartsWith(Path.GetFileName(name.Replace('\\', '/')).Split('.')[0], Path.GetFileName(preview.Problems[0].Where.Replace('\\', '/')), StringComparison.Ordinal);
        Assert.Null(done.Value);
        Assert.Empty(await DaysAsync(desk, "F1"));
    }

    [Theory]
    [InlineData(0, "no ZIP file")]
    [InlineData(1, "There is no picture in it")]
    [InlineData(2, "1,100 files")]
    public async Task PreviewAsync_SetWrongAsAWhole_IsSaid(int which, string why)
    {
        using var desk = await TestDesk.WithAsync(Stock);
        var zip = which switch
        {
            0 => "PK not really"u8.ToArray(),
            1 => FuzzSet.Zip([]),
            _ => FuzzSet.Zip(Enumerable.Range(0, 1_100).Select(i => ($"{i}.jpg", Array.Empty<byte>()))),
        };

        var problem = Assert.Single((await PreviewAsync(desk, zip)).Problems);

        Assert.Equal("set.zip", problem.Where);
        Assert.Contains(why, problem.Text, StringComparison.Ordinal);
    }

    private static Task<PhotoSetPreviewed> PreviewAsync(TestDesk desk, byte[] zip) =>
        desk.Get<ImportPhotoSet>().PreviewAsync(new(new MemoryStream(zip), "set.zip"), TestDesk.Cancel);

    private static Task<Desk.Words.Answer<ImportDone>> RunAsync(TestDesk desk, byte[] zip) =>
        desk.Get<ImportPhotoSet>().RunAsync(new(new MemoryStream(zip), "set.zip"), TestDesk.Who, TestDesk.Cancel);

    private static async Task<IEnumerable<string?>> DaysAsync(TestDesk desk, string tag) =>
        (await desk.Get<AnimalPhotos>().ListAsync(tag, withdrawn: false, TestDesk.Cancel)).Value!.Select(p => p.Taken);
}
