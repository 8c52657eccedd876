using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Clutchwright.Sheets.Papers;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace Clutchwright.Sheets.Drawings;

/// <summary>Writes pages as a tagged PDF with its fonts inside. The same pages, title and time give the same bytes.</summary>
public static partial class PdfWriter
{
    // The library writes the id of the file in hexadecimal.
    private const string Id = "0123456789abcdef";

    // The library keeps fonts and structure for the whole process.
    private static readonly Lock Turn = new();

    /// <summary>Writes a file.</summary>
    /// <param name="title">What the file is called, for readers.</param>
    /// <param name="language">Its language, as <c>en</c>.</param>
    /// <param name="made">When it was made.</param>
    /// <param name="pages">The pages, at least one.</param>
    public static byte[] Write(string title, string language, DateTimeOffset made, IReadOnlyList<PlacedPage> pages)
    {
        lock (Turn)
        {
            using var document = new PdfDocument();
            document.Info.Title = title;
            document.Info.Creator = "Clutchwright";
            document.Info.CreationDate = document.Info.ModificationDate = made.UtcDateTime;
            document.ViewerPreferences.DisplayDocTitle = true;

            // Labels must come out at their own size.
            document.ViewerPreferences.Elements.SetName("/PrintScaling", "/None");
            var access = UAManager.ForDocument(document);
            access.SetDocumentLanguage(language);
            foreach (var page in pages)
            {
                Draw(document, access.StructureBuilder, page);
            }

            using var file = new MemoryStream();
            document.Internals.FirstDocumentID = document.Internals.SecondDocumentID = Id;
            document.Save(file, closeStream: false);
            return Settled(file.ToArray());
        }
    }

    private static void Draw(PdfDocument document, StructureBuilder structure, PlacedPage placed)
    {
        var page = document.AddPage();
        page.Width = XUnit.FromPoint(placed.Paper.WidthMm * PaperSize.PointsPerMm);
        page.Height = XUnit.FromPoint(placed.Paper.HeightMm * PaperSize.PointsPerMm);
        using var graphics = XGraphics.FromPdfPage(page);
        var pen = new PdfPen(graphics);
        foreach (var part in placed.Parts)
        {
            Draw(structure, pen, part);
        }
    }

    private static void Draw(StructureBuilder structure, PdfPen pen, PlacedPart part)
    {
        switch (part.Kind)
        {
            case PartKind.Ornament:
                structure.BeginArtifact();
                break;
            case PartKind.Figure:
                var (x, y, width, height) = PdfPen.Bounds(part.Marks);
                structure.BeginElement(PdfIllustrationElementTag.Figure, part.Words, new XRect(x, y, width, height));
                break;
            default:
                structure.BeginElement(part.Kind switch
                {
                    PartKind.Title => PdfBlockLevelElementTag.Heading1,
                    PartKind.Heading => PdfBlockLevelElementTag.Heading2,
                    PartKind.Table => PdfBlockLevelElementTag.Table,
                    PartKind.Row => PdfBlockLevelElementTag.TableRow,
                    PartKind.HeaderCell => PdfBlockLevelElementTag.TableHeaderCell,
                    PartKind.Cell => PdfBlockLevelElementTag.TableDataCell,
                    _ => PdfBlockLevelElementTag.Paragraph,
                });
                break;
        }

        foreach (var mark in part.Marks)
        {
            pen.Draw(mark);
        }

        foreach (var inner in part.Parts)
        {
            Draw(structure, pen, inner);
        }

        structure.End();
    }

    // The library draws lots for the names of font subsets and for the ids of the file. They are replaced by what follows from the content, each by as
    // many letters, so that every place in the file stays where it is.
    private static byte[] Settled(byte[] file)
    {
        var text = Encoding.Latin1.GetString(file);
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        text = SubsetName().Replace(text, m =>
        {
            if (!names.TryGetValue(m.Groups["tag"].Value, out var name))
            {
                names.Add(m.Groups["tag"].Value, name = $"SHEET{(char)('A' + names.Count)}");
            }

            return "/" + name + "+Source";
        });
        text = FileId().Replace(text, m => "uuid:" + new string('0', m.Length - 5));
        var digest = SHA256.HashData(Encoding.Latin1.GetBytes(text));
        var ids = 0;
        text = FileId().Replace(text, m => "uuid:" + new Guid(digest.AsSpan(16 * (ids++ % 2), 16)).ToString("D"));
        var written = Convert.ToHexString(Encoding.Latin1.GetBytes(Id));
        return Encoding.Latin1.GetBytes(text.Replace(written, Convert.ToHexString(digest)[..written.Length], StringComparison.OrdinalIgnoreCase));
    }

    [GeneratedRegex(@"/(?<tag>[A-Z]{6})\+Source")]
    private static partial Regex SubsetName();

    [GeneratedRegex("uuid:[0-9a-fA-F]{8}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{4}-[0-9a-fA-F]{12}")]
    private static partial Regex FileId();
}
