using System.Globalization;
using Clutchwright.Desk.Incubators;

namespace Clutchwright.Desk.Tests.Incubators;

public sealed class LocalTimeTests
{
    // Europe's rules: an hour forward on 29 March 2026 at 02:00, back on 25 October at 03:00.
    private static readonly TimeZoneInfo Berlin = TimeZoneInfo.FindSystemTimeZoneById("Europe/Berlin");

    [Theory]
    [InlineData("2026-05-01 14:05", "2026-05-01 12:05:00")]
    [InlineData("2026-05-01T14:05:30", "2026-05-01 12:05:30")]
    [InlineData("2026-05-01T14:05Z", "2026-05-01 14:05:00")]
    [InlineData("2026-05-01 14:05:00-05:00", "2026-05-01 19:05:00")]
    [InlineData("01.05.2026 14:05", "2026-05-01 12:05:00")]
    [InlineData("1.1.2026, 02:05 PM", "2026-01-01 13:05:00")]
    [InlineData("2026/05/01 12:05 AM", "2026-04-30 22:05:00")]
    [InlineData("2026-03-29 02:30", null)]
    [InlineData("2026-02-30 02:30", null)]
    [InlineData("2026-05-01", null)]
    [InlineData("05/06/2026 14:05", null)]
    [InlineData("2026-05-01 25:05", null)]
    [InlineData("yesterday", null)]
    public void Read_AsPeopleAndLoggersWrite_IsTheInstant(string text, string? utc) =>
        Assert.Equal(utc, LocalTime.Read(text, null, Berlin)?.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture));

    [Fact]
    public void Read_TheOrderOfDayAndMonth_IsTheOneSaid()
    {
        Assert.Equal(new DateTime(2026, 6, 5, 12, 5, 0), LocalTime.Read("05/06/2026 14:05", DateOrder.DayFirst, Berlin));
        Assert.Equal(new DateTime(2026, 5, 6, 12, 5, 0), LocalTime.Read("05/06/2026 14:05", DateOrder.MonthFirst, Berlin));
        Assert.Equal((5, 6), LocalTime.Doubtful("05/06/2026 14:05"));
        Assert.Null(LocalTime.Doubtful("05.06.2026 14:05"));
    }

    [Fact]
    public void Read_AnHourThatTheClockShowsTwice_IsTheOneAfterTheRowBefore()
    {
        var first = LocalTime.Read("2026-10-25 02:30", null, Berlin);
        var again = LocalTime.Read("2026-10-25 02:30", null, Berlin, first);

        Assert.Equal(new DateTime(2026, 10, 25, 0, 30, 0), first);
        Assert.Equal(new DateTime(2026, 10, 25, 1, 30, 0), again);
    }

    [Theory]
    [InlineData("31.5", TemperatureUnit.Celsius, 31.5)]
    [InlineData("31,5 °C", TemperatureUnit.Fahrenheit, 31.5)]
    [InlineData("88.7", TemperatureUnit.Fahrenheit, 31.5)]
    [InlineData("88.7F", TemperatureUnit.Celsius, 31.5)]
    [InlineData("-4 F", TemperatureUnit.Celsius, -20.0)]
    [InlineData("warm", TemperatureUnit.Celsius, null)]
    [InlineData("1,031.5", TemperatureUnit.Celsius, null)]
    public void TemperatureRead_InEitherUnit_IsCelsius(string text, TemperatureUnit unit, double? celsius) =>
        Assert.Equal(celsius, TemperatureText.Read(text, unit));

    [Theory]
    [InlineData(0, "0 min")]
    [InlineData(59.6, "1 h")]
    [InlineData(200, "3 h 20 min")]
    [InlineData(1440, "1 day")]
    [InlineData(3120, "2 days 4 h")]
    public void DurationOf_Minutes_IsInTwoUnits(double minutes, string text) => Assert.Equal(text, DurationText.Of(TimeSpan.FromMinutes(minutes)));
}
