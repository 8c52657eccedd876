using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

/// <summary>Fills an empty stock with the demo: an invented room of an invented keeper.</summary>
public sealed class LoadDemo
{
    /// <summary>The tag by which the demo is known.</summary>
    internal const string FirstTag = "T-101";

    private readonly ImportTable _import;

    internal LoadDemo(ImportTable import) => _import = import;

    /// <summary>Imports the animals in one deed and their clutches in another, each to be undone like any other.</summary>
    /// <returns>What was added of animals; with a problem nothing was.</returns>
    public async Task<Answer<ImportDone>> RunAsync(string who, CancellationToken cancel)
    {
        var animals = await _import.RunAsync(ImportKind.Animals, new(await ReadAsync("thornmoor.csv", cancel), "the demo stock of Thornmoor"), who, cancel);
        if (animals.Problems.Count > 0)
        {
            return animals;
        }

        var clutches = await _import.RunAsync(ImportKind.Clutches, new(await ReadAsync("thornmoor-clutches.csv", cancel), "the demo stock of Thornmoor"), who, cancel);
        return clutches.Problems.Count == 0 ? animals : clutches;
    }

    private static async Task<byte[]> ReadAsync(string name, CancellationToken cancel)
    {
        await using var file = typeof(LoadDemo).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException("The demo is not part of the program.");
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancel);
        return bytes.ToArray();
    }
}
