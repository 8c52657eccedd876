using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Calendar;

/// <summary>The animals as the calendar asks for them: what they are believed to carry has no part in it, and is not waited for.</summary>
internal sealed class CalendarStock(IReadOnlyList<Animal> animals)
{
    private readonly Dictionary<string, Animal> _byTag = animals.ToDictionary(a => a.Tag.Trim(), StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<AnimalId, Animal> _byId = animals.ToDictionary(a => a.AnimalId);

    public IReadOnlyList<Animal> Animals => animals;

    public Animal? Find(string tag) => _byTag.GetValueOrDefault(tag.Trim());

    public Animal? Find(AnimalId id) => _byId.GetValueOrDefault(id);
}
