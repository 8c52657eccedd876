using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Export;

/// <summary>Puts statements into the cells of a file and takes them out. A statement that is no more than a kind and a text
/// stands in the column of its kind; all others stand together, as JSON, in the column <c>statements</c>.</summary>
internal static class StatementCells
{
    private static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower, allowIntegerValues: false) },
        RespectNullableAnnotations = true,
        RespectRequiredConstructorParameters = true,
    };

    /// <returns>The cells of the columns seen, told, ruled_out and statements. They do not depend on the order given.</returns>
    public static (string Seen, string Told, string RuledOut, string Others) Write(IEnumerable<StatementEntry> statements)
    {
        var ordered = statements
            .Select(statement => (Statement: statement, Json: JsonSerializer.Serialize(Written.Of(statement), Options)))
            .OrderBy(pair => pair.Statement.Kind)
            .ThenBy(pair => pair.Json, StringComparer.Ordinal)
            .ToList();
        var seen = Take(StatementKind.Seen);
        if (seen.Length == 0 && ordered.RemoveFirst(pair => pair.Statement is { Kind: StatementKind.LookedAtNormal, IsPlain: true }))
        {
            seen = Statement.Normal;
        }

        var told = Take(StatementKind.Told);
        var ruledOut = Take(StatementKind.RuledOut);
        return (seen, told, ruledOut, ordered.Count == 0 ? "" : $"[{string.Join(',', ordered.Select(pair => pair.Json))}]");

        string Take(StatementKind kind)
        {
            var index = ordered.FindIndex(pair => pair.Statement.Kind == kind && pair.Statement.IsPlain);
            if (index < 0)
            {
                return "";
            }

            var text = ordered[index].Statement.Text;
            ordered.RemoveAt(index);
            return text;
        }
    }

    /// <summary>Reads the cell of further statements.</summary>
    /// <exception cref="JsonException">It is not what <see cref="Write"/> makes; the message says where.</exception>
    public static IReadOnlyList<StatementEntry> ReadOthers(string cell) =>
        [.. (JsonSerializer.Deserialize<List<Written?>>(cell, Options) ?? [])
            .Select(written => written?.ToEntry() ?? throw new JsonException("A statement cannot be null."))];

    private static bool RemoveFirst<T>(this List<T> list, Predicate<T> which)
    {
        var index = list.FindIndex(which);
        if (index >= 0)
        {
            list.RemoveAt(index);
        }

        return index >= 0;
    }

    private sealed record Written(
        StatementKind Kind,
        string? Text = null,
        string? When = null,
        double? Sure = null,
        string? By = null,
        bool? Found = null,
        double? Sensitivity = null,
        double? Specificity = null)
    {
        public static Written Of(StatementEntry statement) => new(
            statement.Kind,
            statement.Text.Length == 0 ? null : statement.Text,
            statement.When?.ToText(),
            statement.Confidence == 1.0 ? null : statement.Confidence,
            statement.By,
            statement.Test?.Found,
            statement.Test?.Sensitivity,
            statement.Test?.Specificity);

        public StatementEntry ToEntry()
        {
            if ((Found is null) != (Sensitivity is null) || (Found is null) != (Specificity is null))
            {
                throw new JsonException("\"found\", \"sensitivity\" and \"specificity\" belong together.");
            }

            return new StatementEntry
            {
                Kind = Kind,
                Text = Text ?? "",
                When = When is null ? null : ReadWhen(When),
                Confidence = Sure ?? 1.0,
                By = By,
                Test = Found is { } found ? new DnaTest(found, Sensitivity!.Value, Specificity!.Value) : null,
            };
        }

        private static DateRange ReadWhen(string words) => DateRange.Read(words) is { IsDone: true } read
            ? read.Value
            : throw new JsonException($"\"{words}\" is not a date that can be read.");
    }
}
