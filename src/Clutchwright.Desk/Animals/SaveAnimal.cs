using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class SaveAnimal
{
    public Task<Answer<AnimalLine>> RunAsync(AnimalForm form, string? tag, string who, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
