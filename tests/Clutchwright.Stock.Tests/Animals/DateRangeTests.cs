using System.Globalization;
using Clutchwright.Stock.Animals;
using CsCheck;
using Xunit;

namespace Clutchwright.Stock.Tests.Animals;

public sealed class DateRangeTests
{
    // ISO 8601 gives the day, month and year forms; the widths of "about" are the program's own convention.
    [Theory]
    [InlineData("2024-03-03", "2024-03-03", "2024-03-03")]
    [InlineData("3 March 2024", "2024-03-03", "2024-03-03")]
    [InlineData("3 mar 2024", "2024-03-03", "2024-03-03")]
    [InlineData("March 3, 2024", "2024-03-03", "2024-03-03")]
    [InlineData("2024-02", "2024-02-01", "2024-02-29")]
    [InlineData("February 2023", "2023-02-01", "2023-02-28")]
    [InlineData("2023", "2023-01-01", "2023-12-31")]
    [InlineData("  2023  ", "2023-01-01", "2023-12-31")]
    [InlineData("about 3 March 2024", "2024-02-18", "2024-03-17")]
    [InlineData("About  2024-03-03", "2024-02-18", "2024-03-17")]
    [InlineData("~2024-03-03", "2024-02-18", "2024-03-17")]
    [InlineData("about March 2024", "2024-02-01", "2024-04-30")]
    [InlineData("ca. 2023", "2022-07-01", "2024-06-30")]
    [InlineData("2022 to 2023", "2022-01-01", "2023-12-31")]
    [InlineData("between March 2022 and May 2022", "2022-03-01", "2022-05-31")]
    [InlineData("about 2020 to 2021", "2019-07-01", "2021-12-31")]
    public void Read_KeepersForms_GivesFirstAndLastDay(string words, string earliest, string latest)
    {
        var range = DateRange.Read(words).Expect();

        Assert.Equal((Day(earliest), Day(latest), words.Trim()), (range.Earliest, range.Latest, range.Words));
    }

    [Fact]
    public void Read_RangeWithWords_KeepsTheWords()
    {
        var range = DateRange.Read("2020-05-01 to 2020-08-31 (the summer of the move)").Expect();

        Assert.Equal((Day("2020-05-01"), Day("2020-08-31"), "the summer of the move"), (range.Earliest, range.Latest, range.Words));
    }

    [Theory]
    [InlineData("")]
    [InlineData("soon")]
    [InlineData("31 February 2024")]
    [InlineData("2024-13-01")]
    [InlineData("03/04/2024")]
    [InlineData("1066")]
    [InlineData("2023 to 2022")]
    [InlineData("20\n23")]
    [InlineData("about")]
    public void Read_OtherText_IsAProblemThatNamesIt(string words) =>
        Assert.Equal(new AnimalProblem.DateUnreadable(words), DateRange.Read(words).Problem);

    [Fact]
    public void ToText_AnyRange_ReadsBackTheSame() => Gen.Select(
        Gen.Int[0, 100_000], Gen.Int[0, 900], Gen.OneOf(Gen.Const("2023"), Gen.Const("a (b) to c"), Gen.Const("2023 to 2024 (x)"), Gen.Const(")("), Gen.String[Gen.Char[' ', '~'], 1, 30].Where(s => s.Trim().Length > 0)))
        .Sample((first, length, words) =>
        {
            var earliest = new DateOnly(1900, 1, 1).AddDays(first);
            var range = new DateRange(earliest, earliest.AddDays(length), words);

            Assert.Equal(range, DateRange.Read(range.ToText()).Expect());
        });

    [Fact]
    public void New_LatestBeforeEarliest_Throws() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new DateRange(Day("2024-01-02"), Day("2024-01-01"), "x"));

    private static DateOnly Day(string iso) => DateOnly.ParseExact(iso, "yyyy-MM-dd", CultureInfo.InvariantCulture);
}
