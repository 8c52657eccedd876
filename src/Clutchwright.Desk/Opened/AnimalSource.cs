using Clutchwright.Desk.Words;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Opened;

/// <summary>Where a question takes its animals from: the keeper's book, or a pedigree file instead of it. For a file the book stays shut.</summary>
internal sealed class AnimalSource(Func<OpenBook> book, OpenCatalogue catalogue)
{
    /// <summary>The species.</summary>
    public OpenCatalogue Catalogue => catalogue;

    /// <summary>Reads the animals with their statements.</summary>
    /// <param name="file">The file; null: the book.</param>
    /// <param name="cancel">Stops the reading.</param>
    public async Task<Answer<SourceAnimals>> ReadAsync(NamedFile? file, CancellationToken cancel)
    {
        if (file is null)
        {
            return new SourceAnimals((await new AllAnimals(book().Book).RunAsync(cancel)).Expect(), SireChances.None);
        }

        var read = await PedigreeFile.ReadAsync(catalogue, file, cancel);
        return read.Value is { } pedigree ? new SourceAnimals(pedigree.Animals, pedigree.SireWeights) : read.Problems.ToArray();
    }
}

/// <summary>Animals to answer a question from.</summary>
/// <param name="Animals">All that are recorded, with their statements.</param>
/// <param name="SireWeights">The chances of possible sires, where they are given.</param>
internal sealed record SourceAnimals(IReadOnlyList<Animal> Animals, SireChances SireWeights);
