using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Clutchwright.Web.Sheets;

/// <summary>The sheet as a file.</summary>
internal static class SheetEndpoint
{
    public static void MapSheets(this IEndpointRouteBuilder endpoints) =>
        endpoints.MapGet(SheetsForm.FilePath, async (HttpContext context, SheetPrinter printer, CancellationToken cancel) =>
        {
            var form = SheetsForm.Read(context.Request.Query);
            var answer = await printer.RunAsync(form, cancel);
            return answer.Value is { } print
                ? Results.File(print.Pdf, "application/pdf", $"{Safe(print.Name)}.pdf")
                : Results.BadRequest(string.Join('\n', answer.Problems.Select(p => $"{p.Where}: {p.Text}")));
        });

    private static string Safe(string name) => string.Concat(name.Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '-')).Trim('-');
}
