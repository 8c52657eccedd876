using Clutchwright.Desk.Words;
using Clutchwright.Stock;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>Puts the book's refusals into the desk's words.</summary>
internal static class Refusals
{
    public static AskedWrongly[] Of(string where, Problem problem) => problem switch
    {
        AnimalProblem.Refused refused => [.. refused.Problems.SelectMany(p => Of(Field(p.Field) ?? where, p.Problem))],
        StatementProblem.TextUnreadable unreadable =>
            [new(where, ProblemWords.Say(problem).ToString(), unreadable.Trade.Position)],
        _ => [new(where, ProblemWords.Say(problem).ToString())],
    };

    public static string? Field(AnimalField? field) => field switch
    {
        null => null,
        AnimalField.RuledOut => "ruled-out",
        AnimalField.MassGrams => "mass",
        { } known => known.ToString().ToLowerInvariant(),
    };
}
