using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Stock.Animals;

/// <summary>An animal in the book. It changes only through the deeds.</summary>
public sealed class Animal
{
    public const int MaxNameLength = 200;
    public const int MaxNotesLength = 20_000;
    public const double MaxMassGrams = 100_000;

    private readonly List<PossibleSire> _possibleSires = [];
    private readonly List<Statement> _statements = [];

    internal Animal(AnimalId id) => AnimalId = id;

    private Animal()
    {
    }

    public AnimalId AnimalId { get; private set; }

    /// <summary>The keeper's own id.</summary>
    public string Tag { get; private set; } = "";

    public string? Name { get; private set; }

    /// <summary>Null while unsexed.</summary>
    public Sex? Sex { get; private set; }

    public DateRange? Hatched { get; private set; }

    public AnimalId? SireId { get; private set; }

    public AnimalId? DamId { get; private set; }

    /// <summary>The males of which one is the father; empty if the sire is known or nothing is known of him.</summary>
    public IReadOnlyList<AnimalId> PossibleSireIds => [.. _possibleSires.Select(possible => possible.SireId).OrderBy(id => id.Value)];

    /// <summary>The clutch it hatched from; null: none in the book.</summary>
    public ClutchId? ClutchId { get; private set; }

    public AnimalStatus Status { get; private set; }

    public double? MassGrams { get; private set; }

    public string Notes { get; private set; } = "";

    /// <summary>When it was put in the bin (UTC); null if it is not there.</summary>
    public DateTime? BinnedAt { get; private set; }

    /// <summary>Changes with every change of the record; an edit names the version that it was made on.</summary>
    public Guid Version { get; private set; }

    /// <summary>What was said of it and not withdrawn. Filled only where the question that gave the animal says so.</summary>
    public IReadOnlyList<Statement> Statements => _statements;

    internal Animal? Sire { get; private set; }

    internal Animal? Dam { get; private set; }

    internal List<PossibleSire> PossibleSires => _possibleSires;

    /// <summary>The tag as it is compared.</summary>
    internal string TagKey { get; private set; } = "";

    /// <summary>The tag as it is sorted.</summary>
    internal string TagOrder { get; private set; } = "";

    /// <summary>Tag, name and notes as they are searched.</summary>
    internal string SearchText { get; private set; } = "";

    /// <summary>An animal with its statements that is in no book.</summary>
    internal static Animal Of(AnimalId id, AnimalEntry entry, IEnumerable<Statement> statements)
    {
        var animal = new Animal(id);
        animal.Take(entry);
        animal._statements.AddRange(statements);
        return animal;
    }

    /// <summary>An animal as the history keeps it, with its statements, that is in no book.</summary>
    internal static Animal Of(AnimalSnapshot snapshot, IEnumerable<Statement> statements)
    {
        var animal = new Animal(new AnimalId(snapshot.Id));
        animal.Take(snapshot);
        animal._statements.AddRange(statements);
        return animal;
    }

    public override string ToString() => Name is null ? Tag : $"{Tag} {Name}";

    /// <summary>The rules that one record can be held to by itself.</summary>
    internal static IEnumerable<FieldProblem> WhyNot(AnimalEntry entry)
    {
        if (!Tags.IsValid(entry.Tag.Trim()))
        {
            yield return new(AnimalField.Tag, new AnimalProblem.TagInvalid(entry.Tag));
        }

        if (entry.Name is { } name && (name.Trim().Length > MaxNameLength || !TextRules.IsPlainLine(name.Trim())))
        {
            yield return new(AnimalField.Name, new AnimalProblem.TextInvalid(MaxNameLength, OneLine: true));
        }

        if (entry.Notes.Trim().Length > MaxNotesLength || !TextRules.IsStorable(entry.Notes))
        {
            yield return new(AnimalField.Notes, new AnimalProblem.TextInvalid(MaxNotesLength, OneLine: false));
        }

        if (entry.MassGrams is not null and not (> 0 and <= MaxMassGrams))
        {
            yield return new(AnimalField.MassGrams, new AnimalProblem.MassOutOfRange(entry.MassGrams.Value));
        }

        if (!Enum.IsDefined(entry.Status))
        {
            yield return new(AnimalField.Status, new AnimalProblem.StatusUnknown(entry.Status.ToString()));
        }

        if (entry.Sex is { } sex && !Enum.IsDefined(sex))
        {
            yield return new(AnimalField.Sex, new AnimalProblem.SexUnknown(sex.ToString()));
        }

        if (entry.PossibleSires.Count > 0
            && (entry.SireId is not null || entry.PossibleSires.Distinct().Count() < 2))
        {
            yield return new(AnimalField.Sire, new AnimalProblem.PossibleSiresNotSeveral());
        }
    }

    /// <summary>Takes over what was entered; the rules have been checked before.</summary>
    internal void Take(AnimalEntry entry)
    {
        Tag = entry.Tag.Trim();
        Name = TextRules.TrimToNull(entry.Name);
        Sex = entry.Sex;
        Hatched = entry.Hatched;
        SireId = entry.SireId;
        DamId = entry.DamId;
        SetPossibleSires(entry.PossibleSires);
        Status = entry.Status;
        MassGrams = entry.MassGrams;
        Notes = entry.Notes.Trim();
        Derive();
    }

    internal void Weigh(double? grams) => MassGrams = grams;

    internal void Become(AnimalStatus status) => Status = status;

    internal void BelongTo(ClutchId? clutch) => ClutchId = clutch;

    /// <summary>Takes over the parents of its clutch: a sire, several possible ones, or none known.</summary>
    internal void DescendFrom(AnimalId dam, IReadOnlyList<AnimalId> sires)
    {
        DamId = dam;
        SireId = sires is [var sire] ? sire : null;
        SetPossibleSires(sires.Count > 1 ? sires : []);
    }

    internal void Bin(DateTime when) => BinnedAt = when;

    internal void TakeOutOfBin() => BinnedAt = null;

    /// <summary>Takes over a state kept in the history.</summary>
    internal void Take(AnimalSnapshot snapshot)
    {
        Tag = snapshot.Tag;
        Name = snapshot.Name;
        Sex = snapshot.Sex;
        Hatched = snapshot.Hatched?.ToRange();
        SireId = snapshot.Sire is { } sire ? new AnimalId(sire) : null;
        DamId = snapshot.Dam is { } dam ? new AnimalId(dam) : null;
        SetPossibleSires([.. snapshot.PossibleSires.Select(id => new AnimalId(id))]);
        Status = snapshot.Status;
        MassGrams = snapshot.MassGrams;
        Notes = snapshot.Notes;
        BinnedAt = snapshot.BinnedAt;
        ClutchId = snapshot.Clutch is { } clutch ? new ClutchId(clutch) : null;
        Derive();
    }

    internal void NewVersion() => Version = Guid.CreateVersion7();

    private void SetPossibleSires(IReadOnlyList<AnimalId> sires)
    {
        _possibleSires.RemoveAll(possible => !sires.Contains(possible.SireId));
        _possibleSires.AddRange(sires.Distinct()
            .Where(sire => _possibleSires.TrueForAll(possible => possible.SireId != sire))
            .ToList()
            .ConvertAll(sire => new PossibleSire(AnimalId, sire)));
    }

    private void Derive()
    {
        TagKey = Tags.Key(Tag);
        TagOrder = Tags.Order(Tag);
        SearchText = TextRules.Fold(string.Join('\n', Tag, Name, Notes));
    }
}
