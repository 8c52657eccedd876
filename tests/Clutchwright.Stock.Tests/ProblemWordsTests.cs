using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;
using Xunit;

namespace Clutchwright.Stock.Tests;

public sealed class ProblemWordsTests
{
    public static TheoryData<Type> Kinds => new(typeof(Problem).Assembly.GetTypes()
        .Where(type => typeof(Problem).IsAssignableFrom(type) && !type.IsAbstract));

    [Theory]
    [MemberData(nameof(Kinds), DisableDiscoveryEnumeration = true)]
    public void Say_EveryKindOfProblem_HasWordsOfItsOwn(Type kind)
    {
        var problem = (Problem)Make(kind);

        var text = ProblemWords.Say(problem);

        Assert.False(string.IsNullOrWhiteSpace(text.What) && text.WouldBeRight is null && kind.Name != "Refused");
        Assert.DoesNotContain(kind.Name + " {", text.What, StringComparison.Ordinal);
        Assert.NotEqual(problem.ToString(), text.What);
    }

    [Theory]
    [InlineData("Pastle", "'Pastle' is not known.")]
    [InlineData("het Pastle", "\"het Pastle\": 'Pastle' is not known.")]
    public void Say_TextThatCannotBeRead_NamesAWordOnce(string text, string expected) =>
        Assert.Equal(expected, ProblemWords.Say(new StatementProblem.TextUnreadable(text, new("'Pastle' is not known."))).What);

    [Fact]
    public void Kinds_OfTheBook_AreMany() => Assert.True(Kinds.Count > 45);

    /// <summary>Some value of a type, for records that only hold values.</summary>
    private static object Make(Type type)
    {
        if (type == typeof(string))
        {
            return "some";
        }

        if (type == typeof(DateRange))
        {
            return DateRange.On(new DateOnly(2024, 1, 1));
        }

        if (type == typeof(Problem))
        {
            return new AnimalProblem.TagTaken("A");
        }

        // A family of problems stands for any of its own.
        if (type.IsAbstract && typeof(Problem).IsAssignableFrom(type))
        {
            return Make(type.GetNestedTypes().First(one => one.Name != "Refused"));
        }

        if (type.IsEnum)
        {
            return Enum.GetValues(type).GetValue(0)!;
        }

        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            var list = Array.CreateInstance(type.GenericTypeArguments[0], 1);
            list.SetValue(Make(type.GenericTypeArguments[0]), 0);
            return list;
        }

        if (Nullable.GetUnderlyingType(type) is { } inner)
        {
            return Make(inner);
        }

        if (type.IsValueType && type.Namespace == "System")
        {
            return Activator.CreateInstance(type)!;
        }

        var constructor = type.GetConstructors().MaxBy(c => c.GetParameters().Length)!;
        var made = constructor.Invoke([.. constructor.GetParameters().Select(p => Make(p.ParameterType))]);
        foreach (var property in type.GetProperties().Where(p => p.CanWrite && p.GetValue(made) is null))
        {
            property.SetValue(made, Make(property.PropertyType));
        }

        return made;
    }
}
