using System.Globalization;
using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;

namespace Clutchwright.Web.Routes;

/// <summary>The last answers on routes, kept until the book or the day changes, so that another route of the same answer is shown at once.</summary>
/// <remarks>One search runs at a time; the others wait for their turn. A search stops when the request that asked for it does.</remarks>
internal sealed class RouteAnswers(PlanRoute plan, ShowToday stock, TimeProvider clock) : IDisposable
{
    private const int MostKept = 32;

    private readonly SemaphoreSlim _turn = new(1, 1);
    private readonly Lock _gate = new();
    private readonly LinkedList<(string Key, Answer<RoutesAnswer> Answer)> _kept = new();

    /// <summary>The answer if it is at hand.</summary>
    public async Task<Answer<RoutesAnswer>?> KnownAsync(RouteForm form, CancellationToken cancel) => Find(await KeyAsync(form, cancel));

    /// <summary>The answer, reckoned if need be.</summary>
    public async Task<Answer<RoutesAnswer>> AskAsync(RouteForm form, RoutesQuestion question, CancellationToken cancel)
    {
        if (await KnownAsync(form, cancel) is { } known)
        {
            return known;
        }

        await _turn.WaitAsync(cancel);
        try
        {
            var key = await KeyAsync(form, cancel);
            if (Find(key) is { } meanwhile)
            {
                return meanwhile;
            }

            var answer = await Task.Run(() => plan.RunAsync(question, null, cancel), cancel);
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
    private async Task<string> KeyAsync(RouteForm form, CancellationToken cancel)
    {
        var last = await stock.StockAsOfAsync(cancel);
        var today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        return string.Create(CultureInfo.InvariantCulture, $"{last} {today:yyyy-MM-dd} {form.Question()}");
    }

    private Answer<RoutesAnswer>? Find(string key)
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

    private void Keep(string key, Answer<RoutesAnswer> answer)
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
