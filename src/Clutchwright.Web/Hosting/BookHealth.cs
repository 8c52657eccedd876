using Clutchwright.Desk.Animals;
using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace Clutchwright.Web.Hosting;

/// <summary>The app is well if the book can be read.</summary>
internal sealed class BookHealth(ListDeeds listDeeds) : IHealthCheck
{
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
    {
        await listDeeds.RunAsync(null, 1, cancellationToken);
        return HealthCheckResult.Healthy();
    }
}
