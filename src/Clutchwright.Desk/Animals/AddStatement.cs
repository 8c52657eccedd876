using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class AddStatement
{
    public Task<Answer<DeedLine>> RunAsync(string tag, StatementForm form, string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
