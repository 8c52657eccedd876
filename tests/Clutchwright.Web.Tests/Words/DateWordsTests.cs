using System.Globalization;
using Clutchwright.Web.Words;
using Xunit;

namespace Clutchwright.Web.Tests.Words;

public sealed class DateWordsTests
{
    [Theory]
    [InlineData("2025-11-25T09:05:00Z", "today 09:05")]
    [InlineData("2025-11-24T23:59:00Z", "yesterday 23:59")]
    [InlineData("2025-03-01T08:00:00Z", "1 Mar 2025, 08:00")]
    public void Instant_BeforeNow_IsToldAsPeopleDo(string when, string expected)
    {
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("en-GB");

        Assert.Equal(expected, new DateWords(new Noon()).Instant(DateTimeOffset.Parse(when, CultureInfo.InvariantCulture)));
    }

    private sealed class Noon : TimeProvider
    {
        public override TimeZoneInfo LocalTimeZone => TimeZoneInfo.Utc;

        public override DateTimeOffset GetUtcNow() => new(2025, 11, 25, 12, 0, 0, TimeSpan.Zero);
    }
}
