using Clutchwright.Stock.Animals;

namespace Clutchwright.Stock.Seasons;

/// <summary>What an animal is called in a text, and which animal that is, whatever its tag becomes.</summary>
public sealed record NamedAnimal(string Name, AnimalId Animal);
