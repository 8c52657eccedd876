using System.Globalization;
using Clutchwright.Catalogue.Entries;
using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;

namespace Clutchwright.Desk.Season;

/// <summary>Says which animals are ready to breed in a season, by age, mass, last clutch and what the keeper says.</summary>
internal sealed class SeasonReadiness
{
    private readonly Biology _biology;
    private readonly SeasonRules _rules;
    private readonly DateOnly _on;
    private readonly Dictionary<AnimalId, DateOnly> _lastYoung;
    private readonly Dictionary<AnimalId, DateOnly> _lastLaid;

    public SeasonReadiness(Biology biology, SeasonRules rules, StockState stock, DateOnly on)
    {
        (_biology, _rules, _on) = (biology, rules, on);
        _lastLaid = stock.Record.Clutches.GroupBy(c => c.DamId).ToDictionary(g => g.Key, g => g.Max(c => c.Laid.Latest));
        _lastYoung = stock.Animals.Where(a => a.Animal.DamId is not null && a.Animal.Hatched is not null)
            .GroupBy(a => a.Animal.DamId!.Value)
            .ToDictionary(g => g.Key, g => g.Max(a => a.Animal.Hatched!.Latest));
    }

    /// <summary>Why an animal is not ready; null: it is.</summary>
    public string? WhyNot(StockAnimal animal, SeasonAnimal? told)
    {
        if (told?.Hold is { } hold)
        {
            return $"On hold: {hold}.";
        }

        var isMale = animal.Animal.Sex == Sex.Male;
        if (BreedingAge.Reached(_biology, animal.Animal, isMale ? Sex.Male : Sex.Female) > _on)
        {
            return $"Too young: hatched {animal.Animal.Hatched!.Words}; {(isMale ? "a male" : "a female")} breeds from {BreedingAge.Least(_biology, isMale ? Sex.Male : Sex.Female):0} months.";
        }

        var mass = told?.MassGrams ?? animal.Animal.MassGrams;
        if (mass is { } grams && Least(_biology.Find(isMale ? "male-breeding-mass-grams" : "female-breeding-mass-grams")) is { } least && grams < least)
        {
            return $"Too light: {grams:0} g; {(isMale ? "a male" : "a female")} breeds from {least:0} g.";
        }

        if (!isMale && _rules.RestMonths is > 0 and var rest && LastClutch(animal, told) is var (day, isLaid) && day.AddMonths(rest) > _on)
        {
            var date = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
            return isLaid ? $"Rests: last clutch {date}; {rest} months of rest are asked." : $"Rests: her youngest hatched by {date}; {rest} months of rest are asked.";
        }

        return null;
    }

    private static double? Least(Spread? figure) => figure?.Least ?? figure?.Mean;

    private (DateOnly Day, bool IsLaid)? LastClutch(StockAnimal animal, SeasonAnimal? told) =>
        told?.LastClutch is { } said ? (said, true)
        : _lastLaid.TryGetValue(animal.Animal.AnimalId, out var laid) && laid <= _on && !(_lastYoung.TryGetValue(animal.Animal.AnimalId, out var later) && later <= _on && later.AddMonths(-6) > laid) ? (laid, true)
        : _lastYoung.TryGetValue(animal.Animal.AnimalId, out var young) && young <= _on ? (young, false)
        : null;
}
