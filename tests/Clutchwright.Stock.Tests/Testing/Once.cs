namespace Clutchwright.Stock.Tests.Testing;

/// <summary>A trait of tests that are about one database, and so are not run again when all others are run on the second.</summary>
internal static class Once
{
    public const string Key = "Run";
    public const string Value = "once";
}
