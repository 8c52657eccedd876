using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

/// <summary>Fills an empty stock with the demo: an invented room of an invented keeper.</summary>
public sealed class LoadDemo
{
    /// <summary>The tag by which the demo is known.</summary>
    internal const string FirstTag = "T-101";

    private readonly ImportStock _import;

    internal LoadDemo(ImportStock import) => _import = import;

    /// <summary>Imports the demo in one deed, to be undone like any other.</summary>
    public async Task<Answer<ImportDone>> RunAsync(string who, CancellationToken cancel)
    {
        await using var file = typeof(LoadDemo).Assembly.GetManifestResourceStream("thornmoor.csv")
            ?? throw new InvalidOperationException("The demo is not part of the program.");
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancel);
        return await _import.RunAsync(bytes.ToArray(), null, "the demo stock of Thornmoor", who, cancel);
    }
}
