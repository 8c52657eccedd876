using Clutchwright.Desk.Words;
using Clutchwright.Web.Animals;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Primitives;
using Xunit;

namespace Clutchwright.Web.Tests.Animals;

public sealed class AnimalFormsTests
{
    [Theory]
    [InlineData("99,5", 0.995)]
    [InlineData("99.5 %", 0.995)]
    [InlineData("", 0.99)]
    public void Statement_SensitivityAsPeopleWriteIt_IsRead(string text, double share)
    {
        var problems = new List<AskedWrongly>();

        var form = AnimalForms.Statement(Sent(("kind", "DnaTest"), ("sensitivity", text)), problems);

        Assert.Empty(problems);
        Assert.Equal(share, form.Sensitivity, 12);
    }

    // A slip must not make a test that never errs.
    [Theory]
    [InlineData("sensitivity", "nearly all")]
    [InlineData("specificity", "120")]
    [InlineData("sure", "0")]
    public void Statement_NoPercentage_IsNamed(string field, string text)
    {
        var problems = new List<AskedWrongly>();

        AnimalForms.Statement(Sent(("kind", "DnaTest"), (field, text)), problems);

        Assert.Equal(field, Assert.Single(problems).Where);
    }

    private static FormCollection Sent(params (string Name, string Value)[] fields) =>
        new(fields.ToDictionary(f => f.Name, f => new StringValues(f.Value), StringComparer.Ordinal));
}
