using Clutchwright.Desk.Words;

namespace Clutchwright.Desk.Animals;

public sealed class EditForm
{
    public Task<AnimalForm?> RunAsync(string tag, CancellationToken cancel) => throw new NotSupportedException("To come.");
}
