using System.Buffers.Binary;
using System.Text.Json.Nodes;
using Xunit;

namespace Clutchwright.Cli.Tests.Photos;

/// <summary><c>photo</c> and its commands.</summary>
public sealed class PhotoCommandTests
{
    [Fact]
    public async Task AddEditSaveWithdraw_OnePhoto_IsListedAsItIs()
    {
        using var data = await RoomAsync();
        var file = Bitmap(data, "first.bmp", 200);

        await DoneAsync(data, "photo", "add", "A", file, "--taken", "about March 2026", "--caption", "Third shed");
        var photo = Assert.Single((await DoneAsync(data, "photo", "list", "A"))["photos"]!.AsArray())!;
        Assert.Equal(("about March 2026", "Third shed", 2, 2), ((string?)photo["taken"], (string?)photo["caption"], (int)photo["width"]!, (int)photo["height"]!));
        Assert.Equal("juvenile", (string?)photo["stage"]);

        var name = ((string)photo["digest"]!)[..8];
        await DoneAsync(data, "photo", "edit", "A", name, "--caption", "Fourth shed");
        var saved = Path.Combine(data.Path, "saved.jpg");
        await DoneAsync(data, "photo", "save", "A", name, saved);
        var picture = await File.ReadAllBytesAsync(saved, TestContext.Current.CancellationToken);
        Assert.Equal((string?)photo["digest"], Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(picture)));

        await DoneAsync(data, "photo", "withdraw", "A", name);
        Assert.Empty((await DoneAsync(data, "photo", "list", "A"))["photos"]!.AsArray());
        await DoneAsync(data, "photo", "withdraw", "A", name, "--back");
        var page = await Run.MadeUpAsync("photo", "list", "A", "--data", data.Path);
        Assert.Contains("Fourth shed", page.Output, StringComparison.Ordinal);
        Assert.Contains(name, page.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Photo_AskedWrongly_SaysWhatAndWhere()
    {
        using var data = await RoomAsync();
        await DoneAsync(data, "photo", "add", "A", Bitmap(data, "first.bmp", 10));
        var text = data.Write("words.jpg", "no picture");

        Assert.StartsWith("photo: words.jpg: This is no picture that can be read", (await WrongAsync(data, "photo", "add", "A", text)).Error, StringComparison.Ordinal);
        Assert.StartsWith("photo: No photo of A begins with 'zz'", (await WrongAsync(data, "photo", "edit", "A", "zz")).Error, StringComparison.Ordinal);
        Assert.StartsWith("taken: ", (await WrongAsync(data, "photo", "add", "A", Bitmap(data, "second.bmp", 20), "--taken", "yesteryear")).Error, StringComparison.Ordinal);
        var missing = await Run.MadeUpAsync("photo", "add", "A", Path.Combine(data.Path, "nowhere.jpg"), "--data", data.Path);
        Assert.Equal((ExitCode.CouldNotBeDone, string.Empty), (missing.Code, missing.Output));
    }

    // Two by two pixels of one colour, 24 bits each, rows filled up to four bytes.
    private static string Bitmap(DataFolder data, string name, byte blue)
    {
        var bytes = new byte[54 + 16];
        bytes[0] = (byte)'B';
        bytes[1] = (byte)'M';
        var fields = new (int Offset, int Value)[] { (2, bytes.Length), (10, 54), (14, 40), (18, 2), (22, 2), (26, 1 | (24 << 16)), (34, 16) };
        foreach (var (offset, value) in fields)
        {
            BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(offset), value);
        }

        Array.Fill(bytes, blue, 54, 16);
        var path = Path.Combine(data.Path, name);
        File.WriteAllBytes(path, bytes);
        return path;
    }

    private static async Task<DataFolder> RoomAsync()
    {
        var data = new DataFolder();
        await DoneAsync(data, "stock", "import", data.Write("room.csv", "id,hatched\nA,2025-07-01\n"));
        return data;
    }

    private static async Task<(int Code, string Error)> WrongAsync(DataFolder data, params string[] asked)
    {
        var run = await Run.MadeUpAsync([.. asked, "--data", data.Path]);
        Assert.Equal((ExitCode.AskedWrongly, string.Empty), (run.Code, run.Output));
        return (run.Code, run.Error);
    }

    private static async Task<JsonNode> DoneAsync(DataFolder data, params string[] asked)
    {
        var run = await Run.MadeUpAsync([.. asked, "--data", data.Path, "--json"]);
        Assert.Equal((ExitCode.Answered, string.Empty), (run.Code, run.Error));
        return run.Json;
    }
}
