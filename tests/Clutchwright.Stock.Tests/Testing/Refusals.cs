using Clutchwright.Stock.Animals;
using Xunit;

namespace Clutchwright.Stock.Tests.Testing;

internal static class Refusals
{
    /// <summary>The one problem for which an entry was refused.</summary>
    public static T Only<T>(Problem? problem, AnimalField field)
        where T : Problem
    {
        var found = Assert.Single(Assert.IsType<AnimalProblem.Refused>(problem).Problems);
        Assert.Equal(field, found.Field);
        return Assert.IsType<T>(found.Problem);
    }
}
