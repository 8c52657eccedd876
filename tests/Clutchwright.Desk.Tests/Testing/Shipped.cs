using Clutchwright.Catalogue;
using Clutchwright.Desk.Crosses;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Tests.Testing;

/// <summary>The catalogue as it is shipped, read once for all tests.</summary>
internal static class Shipped
{
    public static readonly string Folder = Path.Combine(FindRoot(), "catalogue", "python-regius");

    private static readonly Lazy<OpenCatalogue> Open = new(() =>
        new(CatalogueFolder.Read(Folder).Catalogue ?? throw new InvalidOperationException("The shipped catalogue has problems."), Folder));

    public static OpenCatalogue Catalogue => Open.Value;

    public static Species Species => Catalogue.Species;

    /// <summary>Asks of two animals given as trade text.</summary>
    public static async Task<CrossAnswer> CrossAsync(string sire, string dam, Func<CrossQuestion, CrossQuestion>? with = null)
    {
        var answer = await AskAsync(sire, dam, with);
        Assert.Empty(answer.Problems);
        return answer.Value!;
    }

    public static Task<Desk.Words.Answer<CrossAnswer>> AskAsync(string sire, string dam, Func<CrossQuestion, CrossQuestion>? with = null)
    {
        var question = new CrossQuestion(sire, dam);
        return new AskCross(Catalogue, null).RunAsync(with?.Invoke(question) ?? question, TestContext.Current.CancellationToken);
    }

    public static async Task<WantAnswer> WantAsync(string sire, string dam, string want, int? eggs = null) =>
        (await CrossAsync(sire, dam, q => q with { Wants = [want], Clutch = new(eggs, null, null) })).Wants[0];

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "Clutchwright.slnx")))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The tests do not run inside the checkout.");
        }

        return folder.FullName;
    }
}
