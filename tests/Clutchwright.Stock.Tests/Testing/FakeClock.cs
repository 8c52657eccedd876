namespace Clutchwright.Stock.Tests.Testing;

/// <summary>A clock that is a second later at every look.</summary>
internal sealed class FakeClock : TimeProvider
{
    private long _looks;

    public static DateTime Start { get; } = new(2026, 5, 1, 12, 0, 0, DateTimeKind.Utc);

    public override DateTimeOffset GetUtcNow() => new(Start.AddSeconds(Interlocked.Increment(ref _looks)), TimeSpan.Zero);
}
