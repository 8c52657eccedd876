using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class ShowAnimal
{
    public Task<AnimalAnswer?> RunAsync(string tag, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
