using Clutchwright.Desk.Animals;
using Clutchwright.Desk.Clutches;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Importing;

/// <summary>What would an import of a file of animals, clutches or of the log do? And takes all of it into the book, or nothing.</summary>
public sealed class ImportTable
{
    private readonly OpenBook _book;
    private readonly OpenCatalogue _catalogue;
    private readonly IdSchemes _schemes;
    private readonly ImportMappings _mappings;

    internal ImportTable(OpenBook book, OpenCatalogue catalogue, IdSchemes schemes, ImportMappings mappings) =>
        (_book, _catalogue, _schemes, _mappings) = (book, catalogue, schemes, mappings);

    /// <summary>Reads the file and checks it against the book. Writes nothing.</summary>
    public async Task<ImportPreview> PreviewAsync(ImportKind kind, ImportFile file, CancellationToken cancel)
    {
        switch (kind)
        {
            case ImportKind.Clutches:
                var clutches = await ReadClutchesAsync(file, cancel);
                var ofClutches = (await (await ClutchesAsync(cancel)).PreviewAsync(clutches.File, cancel)).Expect();
                return Preview(kind, ClutchFile.Fields, clutches, ofClutches, row => (row.Row, row.Tag ?? string.Empty, RowWords.Of(row)));
            case ImportKind.Log:
                var log = await ReadLogAsync(file, cancel);
                var ofLog = (await new ImportLog(_book.Book).PreviewAsync(log.File, cancel)).Expect();
                return Preview(kind, LogFile.Fields, log, ofLog, row => (row.Row, row.Animal, RowWords.Of(row)));
            default:
                var animals = await ReadAnimalsAsync(file, cancel);
                var ofAnimals = (await new ReadAnimalFile(_book.Book, Check).RunAsync(animals.File, cancel)).Expect();
                return Preview(kind, AnimalFile.Fields, animals, ofAnimals, row => (row.Row, row.Tag, RowWords.Of(row)));
        }
    }

    /// <summary>Imports the file as the preview showed it, in one deed, and remembers how its columns were read.</summary>
    public async Task<Answer<ImportDone>> RunAsync(ImportKind kind, ImportFile file, string who, CancellationToken cancel)
    {
        switch (kind)
        {
            case ImportKind.Clutches:
                var clutches = await ReadClutchesAsync(file, cancel);
                return await TakeAsync(kind, ClutchFile.Fields, clutches, async f => await (await ClutchesAsync(cancel)).RunAsync(f, file.Name, who, cancel), who, cancel);
            case ImportKind.Log:
                var log = await ReadLogAsync(file, cancel);
                return await TakeAsync(kind, LogFile.Fields, log, f => new ImportLog(_book.Book).RunAsync(f, file.Name, who, cancel), who, cancel);
            default:
                var animals = await ReadAnimalsAsync(file, cancel);
                return await TakeAsync(kind, AnimalFile.Fields, animals, f => new ImportAnimals(_book.Book, Check).RunAsync(f, file.Name, who, cancel), who, cancel);
        }
    }

    /// <summary>What is wrong with a file that was refused, a line for each place.</summary>
    internal static AskedWrongly[] Refused(Stock.Import.ImportProblem.Refused refused) =>
    [
        .. refused.Problems.Select(p => new AskedWrongly(
            p.Row == 0 ? "file" : p.Column is null ? $"row {p.Row}" : $"row {p.Row}, column {p.Column}", ProblemWords.Say(p.Problem).ToString())),
    ];

    private static string Word(ImportKind kind) => kind.ToString().ToLowerInvariant();

    private static ImportPreview Preview<TField, TFile, TRow>(
        ImportKind kind, TableFields<TField> fields, ChosenFile<TField, TFile> read, TablePreview<TRow> preview, Func<TRow, (int Row, string Tag, string Text)> words)
        where TField : struct, Enum
        where TFile : TableFile<TField>
        where TRow : class => new(
            kind,
            [.. read.File.Columns.Select(c => new ImportColumn(c.Header, ColumnChoice.Word(fields, c.Field), read.File.Samples[c.Index]))],
            [.. fields.Words.Select(f => f.Word)],
            [.. preview.Rows.Where(r => r.Fate != RowFate.Refused).Select(r => (Words: words(r.Row), r.Fate)).Select(r => new ImportRow(r.Words.Row, r.Words.Tag, r.Words.Text, r.Fate == RowFate.AlreadyThere))],
            [
                .. read.Problems.Select(p => new ImportProblem(0, null, p.Text)),
                .. preview.Problems.Select(p => new ImportProblem(p.Row, p.Column, ProblemWords.Say(p.Problem).ToString())),
            ],
            read.MappedAsOn);

    private async Task<Answer<ImportDone>> TakeAsync<TField, TFile>(
        ImportKind kind, TableFields<TField> fields, ChosenFile<TField, TFile> read, Func<TFile, Task<Outcome<ImportResult>>> deed, string who, CancellationToken cancel)
        where TField : struct, Enum
        where TFile : TableFile<TField>
    {
        if (read.Problems.Count > 0)
        {
            return read.Problems.ToArray();
        }

        var done = await deed(read.File);
        if (done.IsDone)
        {
            await _mappings.KeepAsync(Word(kind), read.Fields(fields), read.IsByName, who, cancel);
            return new ImportDone(done.Value.Added, done.Value.Skipped, done.Value.Deed.Number);
        }

        return done.Problem is Stock.Import.ImportProblem.Refused refused ? Refused(refused) : Refusals.Of("file", done.Problem);
    }

    private Task<ChosenFile<Stock.Animals.AnimalField, AnimalFile>> ReadAnimalsAsync(ImportFile file, CancellationToken cancel) =>
        ColumnChoice.ReadAsync(Word(ImportKind.Animals), AnimalFile.Fields, fields => AnimalFile.ReadAsync(Open(file), fields, cancel), file.Mapping, _mappings, cancel);

    private Task<ChosenFile<ClutchField, ClutchFile>> ReadClutchesAsync(ImportFile file, CancellationToken cancel) =>
        ColumnChoice.ReadAsync(Word(ImportKind.Clutches), ClutchFile.Fields, fields => ClutchFile.ReadAsync(Open(file), fields, cancel), file.Mapping, _mappings, cancel);

    private Task<ChosenFile<LogField, LogFile>> ReadLogAsync(ImportFile file, CancellationToken cancel) =>
        ColumnChoice.ReadAsync(Word(ImportKind.Log), LogFile.Fields, fields => LogFile.ReadAsync(Open(file), fields, cancel), file.Mapping, _mappings, cancel);

    private async Task<ImportClutches> ClutchesAsync(CancellationToken cancel)
    {
        var scheme = (await _schemes.ReadAsync(cancel)).Clutches;
        return new(_book.Book, Check, (laid, dam, sire, isTaken) => scheme.Next(laid, string.Empty, dam, sire, isTaken));
    }

    private TradeTextProblem? Check(string column, string text) => StatementReader.Check(_catalogue, column, text);

    private static MemoryStream Open(ImportFile file) => new(file.Content.ToArray(), writable: false);
}
