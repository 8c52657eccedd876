using Clutchwright.Desk.Happenings;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Condition;

/// <summary>What is written down of the animal in hand by one press.</summary>
internal static class ConditionEndpoints
{
    public static void MapCondition(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapPost("/deeds/quick", async (
            WriteHappening write, [FromForm] string tag, [FromForm] string kind, [FromForm] string? amount, [FromForm] string? back, CancellationToken cancel) =>
            DeedEndpoints.Done(await write.RunAsync(new(tag, kind, null, amount, null, null), Keeper.Name, cancel), back));
}
