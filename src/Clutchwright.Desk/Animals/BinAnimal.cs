using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class BinAnimal
{
    public Task<Answer<DeedLine>> RunAsync(string tag, string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
