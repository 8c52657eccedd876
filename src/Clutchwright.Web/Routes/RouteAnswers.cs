using Clutchwright.Desk.Routes;
using Clutchwright.Desk.Words;
using Clutchwright.Web.Hosting;

namespace Clutchwright.Web.Routes;

/// <summary>The last answers on routes, so that another route of the same answer is shown at once.</summary>
internal sealed class RouteAnswers(PlanRoute plan, KeptAnswers<RoutesAnswer> kept)
{
    /// <summary>The answer if it is at hand.</summary>
    public Task<Answer<RoutesAnswer>?> KnownAsync(RouteForm form, CancellationToken cancel) => kept.KnownAsync(form.Question(), cancel);

    /// <summary>The answer, reckoned if need be.</summary>
    public Task<Answer<RoutesAnswer>> AskAsync(RouteForm form, RoutesQuestion question, CancellationToken cancel) =>
        kept.AskAsync(form.Question(), stop => plan.RunAsync(question, null, stop), cancel);
}
