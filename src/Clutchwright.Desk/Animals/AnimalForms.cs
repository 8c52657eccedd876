using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Animals;

/// <summary>Turns what a form holds into what the book takes.</summary>
internal static class AnimalForms
{
    public static async Task<AnimalEntry?> EntryAsync(OpenBook book, AnimalForm form, List<AskedWrongly> problems, CancellationToken cancel)
    {
        var sex = form.Sex.Trim().ToUpperInvariant() switch
        {
            "M" or "MALE" or "1.0" => Sex.Male,
            "F" or "FEMALE" or "0.1" => Sex.Female,
            "U" or "" or "0.0.1" => (Sex?)null,
            _ => Wrong<Sex?>("sex", $"\"{form.Sex}\" is no sex. Write m, f or u (unsexed)."),
        };
        var hatched = string.IsNullOrWhiteSpace(form.Hatched) ? null : Date("hatched", form.Hatched, problems);
        double? mass = null;
        if (!string.IsNullOrWhiteSpace(form.MassGrams))
        {
            mass = DecimalText.Read(form.MassGrams) ?? Wrong<double?>("mass", $"\"{form.MassGrams}\" is no mass. Write grams, as 1450 or 62.5, with nothing between thousands.");
        }

        if (!Enum.TryParse<AnimalStatus>(form.Status, ignoreCase: true, out var status) || !Enum.IsDefined(status))
        {
            problems.Add(new("status", $"\"{form.Status}\" is no status. One of: {string.Join(", ", Enum.GetNames<AnimalStatus>())}."));
        }

        var sires = await ParentsAsync("sire", form.Sire);
        var dams = await ParentsAsync("dam", form.Dam);
        if (dams.Count > 1)
        {
            problems.Add(new("dam", $"\"{form.Dam}\" names several dams; only sires can be in doubt."));
        }

        return problems.Count > 0 ? null : new AnimalEntry
        {
            Tag = form.Tag,
            Name = form.Name,
            Sex = sex,
            Hatched = hatched,
            SireId = sires.Count == 1 ? sires[0] : null,
            PossibleSires = sires.Count > 1 ? sires : [],
            DamId = dams.Count == 1 ? dams[0] : null,
            Status = status,
            MassGrams = mass,
            Notes = form.Notes ?? string.Empty,
        };

        T? Wrong<T>(string where, string text)
        {
            problems.Add(new(where, text));
            return default;
        }

        async Task<List<AnimalId>> ParentsAsync(string where, string? tags)
        {
            var ids = new List<AnimalId>();
            foreach (var tag in (tags ?? string.Empty).Split('|', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            {
                var found = await new FindAnimal(book.Book).RunAsync(tag, cancel);
                if (found.IsDone)
                {
                    ids.Add(found.Value.Animal.AnimalId);
                }
                else
                {
                    problems.AddRange(Refusals.Of(where, found.Problem));
                }
            }

            return ids;
        }
    }

    /// <summary>The plain statements a form holds.</summary>
    public static IReadOnlyList<StatementEntry> Statements(AnimalForm form)
    {
        var entries = new List<StatementEntry>();
        Add(StatementKind.Seen, form.Seen);
        Add(StatementKind.Told, form.Told);
        Add(StatementKind.RuledOut, form.RuledOut);
        return entries;

        void Add(StatementKind kind, string? text)
        {
            if (!string.IsNullOrWhiteSpace(text))
            {
                entries.Add(new StatementEntry { Kind = kind, Text = text.Trim() });
            }
        }
    }

    public static DateRange? Date(string where, string words, List<AskedWrongly> problems)
    {
        var date = DateRange.Read(words);
        if (!date.IsDone)
        {
            problems.AddRange(Refusals.Of(where, date.Problem));
        }

        return date.Value;
    }
}
