using System.Globalization;
using Clutchwright.Desk.Sheets;
using Clutchwright.Desk.Words;
using Microsoft.AspNetCore.Http;

namespace Clutchwright.Web.Sheets;

/// <summary>What a keeper wants printed, as the address holds it.</summary>
public sealed record SheetsForm
{
    /// <summary>The page.</summary>
    public const string Path = "/sheets";

    /// <summary>The file.</summary>
    public const string FilePath = "/sheets/print.pdf";

    /// <summary>Gets the sheets there are.</summary>
    public static IReadOnlyList<(string Value, string Words)> Kinds { get; } =
    [
        ("label", "Labels"), ("record", "Records"), ("lineage", "Lineage"), ("sale", "Sale"), ("clutch", "Clutch card"), ("season", "Season"),
    ];

    // Fields that are handed on from sheet to sheet, or belong to one.
    private static readonly string[] Fields =
    [
        "find", "which", "clutch", "page", "size", "margins", "gaps", "grid", "start", "link", "code", "outlines", "generations", "supplier", "buyer", "sold", "source",
        "kept", "sire", "dam", "laid", "eggs", "year",
    ];

    private IReadOnlyDictionary<string, string> Given { get; init; } = new Dictionary<string, string>();

    /// <summary>Gets which sheet.</summary>
    public string Kind { get; init; } = "label";

    /// <summary>Gets the animals chosen.</summary>
    public IReadOnlyList<string> Tags { get; init; } = [];

    /// <summary>Gets whether it is about animals of the stock.</summary>
    public bool IsOfAnimals => Kind is not ("clutch" or "season");

    /// <summary>Gets whether enough is said to print something.</summary>
    public bool IsAsked => Kind switch { "clutch" => this["kept"] is not null || this["sire"] is not null || this["dam"] is not null, "season" => true, _ => Tags.Count > 0 };

    /// <summary>Gets the page it stands on.</summary>
    public string Page => this["page"] ?? "a4";

    /// <summary>Gets what is given in a field; <c>null</c>: nothing.</summary>
    public string? this[string field] => Given.GetValueOrDefault(field);

    public static SheetsForm Read(IQueryCollection query)
    {
        var kind = query["sheet"].ToString();
        return new()
        {
            Kind = Kinds.Any(k => k.Value == kind) ? kind : "label",
            Tags = [.. query["tag"].OfType<string>().Select(t => t.Trim()).Where(t => t.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).Take(PrintLabels.Most)],
            Given = Fields.Select(f => (Field: f, Text: query[f].ToString().Trim())).Where(f => f.Text.Length > 0).ToDictionary(f => f.Field, f => f.Text, StringComparer.Ordinal),
        };
    }

    /// <summary>The address of this.</summary>
    public string Link(string path, string? kind = null, IEnumerable<string>? tags = null) => Links.With(
        path, [("sheet", kind ?? Kind), .. (tags ?? Tags).Select(t => ("tag", (string?)t)), .. Fields.Select(f => (f, this[f]))]);

    public PickQuestion Pick() => new(
        this["find"], this["which"] switch { "held" => "HeldBack", "sale" => "ForSale", "kept" => "Kept", _ => null }, this["clutch"]);

    public LabelsQuestion Labels() => new(Tags)
    {
        Layout = new() { Page = Page, Size = this["size"], Margins = this["margins"], Gaps = this["gaps"], Grid = this["grid"], Start = this["start"] },
        Link = this["code"] is "link" ? this["link"] ?? "?" : null,
        WithCode = this["code"] is not "none",
        WithOutlines = this["outlines"] is not null,
    };

    public SheetQuestion Sheets(List<AskedWrongly> problems) => new(
        Kind switch { "lineage" => SheetKind.Lineage, "sale" => SheetKind.Sale, _ => SheetKind.Record }, Tags)
    {
        Page = Page,
        Generations = Whole("generations", 1, PrintSheets.MostGenerations, problems) ?? 3,
        Sale = new() { Supplier = this["supplier"], Buyer = this["buyer"], Sold = this["sold"], Source = this["source"] },
    };

    public ClutchCardQuestion Clutch(List<AskedWrongly> problems) => new(this["sire"] ?? string.Empty, this["dam"] ?? string.Empty)
    {
        Clutch = this["kept"], Laid = this["laid"], Eggs = Whole("eggs", 1, Clutchwright.Desk.Crosses.ClutchSetting.MostEggs, problems), Page = Page,
    };

    public int? Year(List<AskedWrongly> problems) => Whole("year", 1, 9999, problems);

    private int? Whole(string field, int least, int most, List<AskedWrongly> problems)
    {
        if (this[field] is not { } text)
        {
            return null;
        }

        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most)
        {
            return number;
        }

        problems.Add(new(field, $"Give a whole number from {least} to {most}, not “{text}”."));
        return null;
    }
}
