using Clutchwright.Desk.Proofs;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Import;

namespace Clutchwright.Desk.Kin;

/// <summary>How related founders are, from a file of three columns, <c>a</c>, <c>b</c> and <c>kinship</c>.</summary>
/// <remarks>A row that names one animal twice gives its kinship with itself, (1 + F) / 2. Pairs that are not named are unrelated.</remarks>
internal sealed class FounderKinshipFile
{
    private static readonly string[] Columns = ["a", "b", "kinship"];

    /// <summary>By the founder's index, its own inbreeding.</summary>
    public required IReadOnlyDictionary<int, Probability> Inbreeding { get; init; }

    /// <summary>By indexes, the pairs.</summary>
    public required IReadOnlyList<(int First, int Second, Probability Kinship)> Kinships { get; init; }

    /// <summary>Reads a file.</summary>
    /// <param name="file">The file.</param>
    /// <param name="animals">The animals that it may name.</param>
    /// <returns>What it says, or everything that is wrong with it, with the line as an editor counts.</returns>
    public static Answer<FounderKinshipFile> Read(NamedFile file, IReadOnlyList<Animal> animals)
    {
        var read = CsvTable.Read(file.Content.Span);
        if (!read.IsDone)
        {
            return ((ImportProblem.Refused)read.Problem).Problems
                .Select(p => p.Problem is ImportProblem.Empty
                    ? new AskedWrongly(file.Name, "The file is empty. The first row names the columns: a, b, kinship.")
                    : new AskedWrongly($"{file.Name}, line {p.Line}", ProblemWords.Say(p.Problem).ToString()))
                .ToArray();
        }

        var header = read.Value.Header.Select(h => h.ToLowerInvariant()).ToArray();
        var places = Columns.Select(c => Array.IndexOf(header, c)).ToArray();
        if (places.Any(p => p < 0))
        {
            return new AskedWrongly(
                $"{file.Name}, line 1",
                $"The columns are {string.Join(", ", read.Value.Header)}. Name two founders a and b, and their kinship: a,b,kinship.");
        }

        var rows = new FounderKinshipRows(file.Name, animals);
        foreach (var row in read.Value.Rows)
        {
            rows.Add(row.Line, row.Cells[places[0]], row.Cells[places[1]], row.Cells[places[2]]);
        }

        return rows.Problems.Count > 0
            ? rows.Problems.ToArray()
            : new FounderKinshipFile { Inbreeding = rows.Inbreeding, Kinships = rows.Kinships };
    }
}

/// <summary>The rows of a file of founders' kinship, as they are read.</summary>
internal sealed class FounderKinshipRows
{
    private readonly string _file;
    private readonly IReadOnlyList<Animal> _animals;
    private readonly Dictionary<string, int> _indexOf = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<(int, int), int> _lineOf = [];

    public FounderKinshipRows(string file, IReadOnlyList<Animal> animals)
    {
        _file = file;
        _animals = animals;
        for (var i = 0; i < animals.Count; i++)
        {
            _indexOf.TryAdd(animals[i].Tag.Trim(), i);
        }
    }

    public List<AskedWrongly> Problems { get; } = [];

    public Dictionary<int, Probability> Inbreeding { get; } = [];

    public List<(int First, int Second, Probability Kinship)> Kinships { get; } = [];

    public void Add(int line, string first, string second, string kinship)
    {
        var (one, other) = (Founder(line, "a", first), Founder(line, "b", second));
        var value = ChanceReader.Read(kinship);
        if (value is null)
        {
            Problem(line, "kinship", $"'{kinship}' is no kinship. Write a number from 0 to 1, a ratio such as 1/4 or a percentage.");
        }

        if (one is not { } a || other is not { } b || value is not { } chance)
        {
            return;
        }

        if (!_lineOf.TryAdd((Math.Min(a, b), Math.Max(a, b)), line))
        {
            Problem(line, null, $"{first} and {second} stand in line {_lineOf[(Math.Min(a, b), Math.Max(a, b))]} already. Each pair has one row.");
        }
        else if (a != b)
        {
            Kinships.Add((a, b, chance));
        }
        else if (chance < Probability.Half)
        {
            Problem(line, "kinship", $"{first} cannot have kinship {kinship} with itself: it is (1 + F) / 2, at least 1/2.");
        }
        else
        {
            Inbreeding.Add(a, chance.Exact is { } exact ? Probability.From((exact * 2) - Fraction.One) : Probability.Rounded((2.0 * chance.Value) - 1.0));
        }
    }

    private int? Founder(int line, string column, string tag)
    {
        if (!_indexOf.TryGetValue(tag, out var index))
        {
            var near = NearWords.Of(tag, _animals.Select(a => a.Tag)).Take(1).Select(t => $" Did you mean {t}?").SingleOrDefault();
            Problem(line, column, tag.Length == 0 ? "A founder is missing. Each row names two." : $"There is no animal '{tag}'.{near}");
            return null;
        }

        var animal = _animals[index];
        if (animal.SireId is null && animal.DamId is null && animal.PossibleSireIds.Count == 0)
        {
            return index;
        }

        Problem(line, column, $"{animal.Tag} is no founder: its parents say how related it is. Name animals without sire and dam.");
        return null;
    }

    private void Problem(int line, string? column, string text) =>
        Problems.Add(new(column is null ? $"{_file}, line {line}" : $"{_file}, line {line}, column {column}", text));
}
