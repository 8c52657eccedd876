using System.Text;
using Clutchwright.Desk.Charts;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Kin;

/// <summary>The chart as a file.</summary>
internal static class ChartEndpoint
{
    public const string Path = "/kin/chart.svg";

    public static void MapChart(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(Path, async (HttpContext context, DrawChart draw, CancellationToken cancel) =>
        {
            var problems = new List<AskedWrongly>();
            var question = KinForm.Read(context.Request.Query).Question(problems);
            var answer = problems.Count > 0 ? null : await draw.RunAsync(question, cancel);
            return answer?.Value is { } chart
                ? Results.File(Encoding.UTF8.GetBytes(ChartSvg.ForFile(chart)), "image/svg+xml; charset=utf-8", $"pedigree-{Safe(chart.Tag ?? "stock")}.svg")
                : Results.BadRequest(string.Join('\n', (answer?.Problems ?? problems).Select(p => $"{p.Where}: {p.Text}")));
        });

    private static string Safe(string tag) => string.Concat(tag.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-'));
}
