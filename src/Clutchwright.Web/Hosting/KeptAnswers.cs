using System.Globalization;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Words;

namespace Clutchwright.Web.Hosting;

/// <summary>The last answers to questions that take long, kept until what is recorded of the animals, or the day, changes.</summary>
/// <remarks>One question is worked on at a time; the others wait for their turn. The work stops when the request that asked for it does.</remarks>
internal sealed class KeptAnswers<T>(ShowToday stock, TimeProvider clock) : IDisposable
    where T : class
{
    private const int MostKept = 32;

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Lock _gate = new();
    private readonly LinkedList<(string Key, Answer<T> Answer)> _kept = new();

    /// <summary>The answer if it is at hand.</summary>
    /// <param name="asked">The question, as its address says it.</param>
    /// <param name="cancel">Stops the looking.</param>
    public async Task<Answer<T>?> KnownAsync(string asked, CancellationToken cancel) => Find(await KeyAsync(asked, cancel));

    /// <summary>The answer, reckoned if need be.</summary>
    /// <param name="asked">The question, as its address says it.</param>
    /// <param name="reckon">Reckons the answer.</param>
    /// <param name="cancel">Stops the work.</param>
    public async Task<Answer<T>> AskAsync(string asked, Func<CancellationToken, Task<Answer<T>>> reckon, CancellationToken cancel)
    {
        if (await KnownAsync(asked, cancel) is { } known)
        {
            return known;
        }

        await _turn.WaitAsync(cancel);
        try
        {
            var key = await KeyAsync(asked, cancel);
            if (Find(key) is { } meanwhile)
            {
                return meanwhile;
            }

            var answer = await Task.Run(() => reckon(cancel), cancel);
            Keep(key, answer);
            return answer;
        }
        finally
        {
            _turn.Release();
        }
    }

    public void Dispose() => _turn.Dispose();

    // What an answer rests on: the question, the animals as recorded, and the day, by which they come of age.
    private async Task<string> KeyAsync(string asked, CancellationToken cancel)
    {
        var last = await stock.StockAsOfAsync(cancel);
        var today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        return string.Create(CultureInfo.InvariantCulture, $"{last} {today:yyyy-MM-dd} {asked}");
    }

    private Answer<T>? Find(string key)
    {
        lock (_gate)
        {
            for (var node = _kept.First; node is not null; node = node.Next)
            {
                if (node.Value.Key == key)
                {
                    _kept.Remove(node);
                    _kept.AddFirst(node);
                    return node.Value.Answer;
                }
            }

            return null;
        }
    }

    private void Keep(string key, Answer<T> answer)
    {
        lock (_gate)
        {
            _kept.AddFirst((key, answer));
            if (_kept.Count > MostKept)
            {
                _kept.RemoveLast();
            }
        }
    }
}
