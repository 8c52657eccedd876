using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class WithdrawStatement
{
    public Task<Answer<DeedLine>> RunAsync(Guid statement, string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
