using Clutchwright.Desk.Season;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Hosting;

namespace Clutchwright.Web.Season;

/// <summary>The last plans of seasons.</summary>
internal sealed class SeasonAnswers(PlanSeason plan, KeptAnswers<SeasonAnswer> kept)
{
    // Most plans are there before one would notice; for the others a page comes that waits.
    private static readonly TimeSpan Soon = TimeSpan.FromSeconds(2);

    /// <summary>The plan, reckoned if need be.</summary>
    /// <param name="form">What is asked.</param>
    /// <param name="waits">Whether it may take as long as it takes.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <returns>The plan; <c>null</c>: it takes longer than one may wait for it here.</returns>
    public async Task<Answer<SeasonAnswer>?> AskAsync(SeasonForm form, bool waits, CancellationToken cancel)
    {
        var question = new SeasonQuestion(SeasonGoals.Write(form));
        var asked = System.Text.Encoding.UTF8.GetString(question.Goals.Content.Span);
        if (waits)
        {
            return await kept.AskAsync(asked, stop => plan.RunAsync(question, null, stop), cancel);
        }

        using var soon = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        soon.CancelAfter(Soon);
        try
        {
            return await kept.AskAsync(asked, stop => plan.RunAsync(question, null, stop), soon.Token);
        }
        catch (OperationCanceledException) when (!cancel.IsCancellationRequested)
        {
            return null;
        }
    }
}
