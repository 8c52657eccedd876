using Clutchwright.Desk.Incubators;
using Clutchwright.Web.Deeds;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Incubators;

/// <summary>Deeds of one press about incubators.</summary>
internal static class IncubatorEndpoints
{
    public static void MapIncubators(this IEndpointRouteBuilder endpoints)
    {
        endpoints.MapPost("/deeds/reading-back", async (WriteIncubator write, [FromForm] Guid id, [FromForm] string? back, CancellationToken cancel) =>
            DeedEndpoints.Done(await write.WithdrawAsync(id, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/incubator-retire", async (
            WriteIncubator write, [FromForm] string name, [FromForm(Name = "is-back")] bool? isBack, [FromForm] string? back, CancellationToken cancel) =>
            DeedEndpoints.Done(await write.RetireAsync(name, isBack == true, Keeper.Name, cancel), back));
        endpoints.MapPost("/deeds/temperature-unit", async (TemperatureSetting setting, [FromForm] string unit, [FromForm] string? back, CancellationToken cancel) =>
            DeedEndpoints.Done(await setting.KeepAsync(unit, Keeper.Name, cancel), back));
    }
}
