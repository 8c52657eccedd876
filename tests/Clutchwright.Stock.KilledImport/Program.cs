using System.Globalization;
using System.Text;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Storage;

// A program to be killed: opens the book in a folder or, by a connection string, on a server, imports so many animals into it and says how far it is. What it said to
// be done must still be there afterwards.
var place = args[0].Contains('=', StringComparison.Ordinal) ? BookPlace.OnPostgreSql(args[0]) : BookPlace.InFolder(args[0]);
var count = int.Parse(args[1], CultureInfo.InvariantCulture);

var text = new StringBuilder("id,sex,sire,dam,hatched,seen,told\r\n");
for (var i = 0; i < count; i++)
{
    var parents = i < 40 ? "," : string.Create(CultureInfo.InvariantCulture, $"K{(i / 2 * 2) - 40},K{(i / 2 * 2) - 39}");
    text.Append(CultureInfo.InvariantCulture, $"K{i},{(i % 2 == 0 ? 'm' : 'f')},{parents},,Pastel,66% het Clown\r\n");
}

Say("started");
using var book = (await Book.OpenAsync(place, TimeProvider.System, CancellationToken.None)).Expect();
Say("open");
var import = new ImportAnimals(book, (_, _) => null);
var result = (await import.RunAsync(AnimalFile.Read(text.ToString()), "killed.csv", "test", CancellationToken.None)).Expect();
Say(string.Create(CultureInfo.InvariantCulture, $"done {result.Added}"));

static void Say(string words)
{
    Console.WriteLine(words);
    Console.Out.Flush();
}
