using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class ListAnimals
{
    public Task<AnimalsAnswer> RunAsync(AnimalsQuestion question, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
