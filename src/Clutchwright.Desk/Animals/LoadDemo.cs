using System.Globalization;
using System.Text;
using Clutchwright.Desk.Importing;
using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

/// <summary>Fills an empty stock with the demo: an invented room of an invented keeper.</summary>
public sealed class LoadDemo
{
    /// <summary>The tag by which the demo is known.</summary>
    internal const string FirstTag = "T-101";

    private const string Name = "the demo stock of Thornmoor";

    private readonly ImportTable _import;
    private readonly TimeProvider _clock;

    internal LoadDemo(ImportTable import, TimeProvider clock) => (_import, _clock) = (import, clock);

    /// <summary>Imports the animals, their clutches and the log of the last months, each in a deed.</summary>
    /// <returns>The deeds, to be undone together; with a problem nothing was added after it.</returns>
    public async Task<Answer<DemoDone>> RunAsync(string who, CancellationToken cancel)
    {
        var deeds = new List<long>();
        foreach (var (kind, content) in new[]
        {
            (ImportKind.Animals, await ReadAsync("thornmoor.csv", cancel)),
            (ImportKind.Clutches, await ReadAsync("thornmoor-clutches.csv", cancel)),
            (ImportKind.Log, Dated(await ReadAsync("thornmoor-log.csv", cancel))),
        })
        {
            var done = await _import.RunAsync(kind, new(content, Name), who, cancel);
            if (done.Value is not { } added)
            {
                return done.Problems.ToArray();
            }

            deeds.Add(added.Deed);
        }

        return new DemoDone(deeds);
    }

    // Its second column says how many days ago: a log that ended last year would make every animal look neglected.
    private byte[] Dated(byte[] log)
    {
        var today = DateOnly.FromDateTime(_clock.GetLocalNow().DateTime);
        var lines = Encoding.UTF8.GetString(log).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(',', 3)).ToArray();
        return Encoding.UTF8.GetBytes(string.Join('\n', lines.Skip(1)
            .Select(line => string.Create(CultureInfo.InvariantCulture, $"{line[0]},{today.AddDays(-int.Parse(line[1], CultureInfo.InvariantCulture)):yyyy-MM-dd},{line[2]}"))
            .Prepend($"{lines[0][0]},date,{lines[0][2]}")));
    }

    private static async Task<byte[]> ReadAsync(string name, CancellationToken cancel)
    {
        await using var file = typeof(LoadDemo).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException("The demo is not part of the program.");
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes, cancel);
        return bytes.ToArray();
    }
}

/// <summary>What was written of the demo.</summary>
/// <param name="Deeds">The deeds, in the order in which they were done.</param>
public sealed record DemoDone(IReadOnlyList<long> Deeds);
