using System.Globalization;
using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Backups;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Export;
using Clutchwright.Stock.Happenings;
using Clutchwright.Stock.History;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Photos;
using Clutchwright.Stock.Routes;
using Clutchwright.Stock.Seasons;
using Clutchwright.Stock.Settings;
using Clutchwright.Stock.Statements;
using Clutchwright.Stock.Storage;

namespace Clutchwright.Stock;

/// <summary>A problem in words: what is wrong, and what would be right (null where there is nothing to add).</summary>
public sealed record ProblemText(string What, string? WouldBeRight = null)
{
    public override string ToString() => WouldBeRight is null ? What : $"{What} {WouldBeRight}";
}

/// <summary>The words for the book's problems, put once so that every face uses the same ones.</summary>
public static class ProblemWords
{
    private const string Dates =
        "Write 2024-03-03, March 2024, 2024, about 3 March 2024, or 2022 to 2023; leave it empty if not known.";

    public static ProblemText Say(Problem problem) => problem switch
    {
        AnimalProblem animal => Of(animal),
        StatementProblem statement => Of(statement),
        HistoryProblem history => Of(history),
        ImportProblem import => Of(import),
        StorageProblem storage => Of(storage),
        SeasonProblem season => Of(season),
        HappeningProblem happening => Of(happening),
        RouteProblem route => Of(route),
        BackupProblem backup => Of(backup),
        ClutchProblem clutch => Of(clutch),
        IncubatorProblem incubator => Of(incubator),
        PhotoProblem photo => Of(photo),
        SettingProblem setting => Of(setting),
        BookFileProblem file => Of(file),
        _ => new(problem?.ToString() ?? throw new ArgumentNullException(nameof(problem))),
    };

    /// <summary>A problem of a file in one line: where, what, and what would be right.</summary>
    public static string Say(RowProblem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        var place = problem.Row == 0 ? "file" : string.Create(CultureInfo.InvariantCulture, $"row {problem.Row}");
        return problem.Column is null ? $"{place}: {Say(problem.Problem)}" : $"{place}, column {problem.Column}: {Say(problem.Problem)}";
    }

    private static ProblemText Of(AnimalProblem problem) => problem switch
    {
        AnimalProblem.TagInvalid p => new(
            p.Tag.Trim().Length == 0 ? "The id is missing." : $"\"{TextRules.Shorten(p.Tag, 60)}\" cannot be an id.",
            $"An id is one line of 1 to {Tags.MaxLength} characters without {Tags.Separator}."),
        AnimalProblem.TagTaken p => new($"Another animal has the id {p.Tag}.", "Ids differ by more than upper and lower case."),
        AnimalProblem.TextInvalid p => new(
            "The text is too long or has characters that cannot be kept.",
            p.OneLine ? $"One line of at most {p.MaxLength} characters." : $"At most {p.MaxLength} characters."),
        AnimalProblem.DateUnreadable p => new($"\"{TextRules.Shorten(p.Words, 100)}\" is not a date that can be read.", Dates),
        AnimalProblem.MassOutOfRange p => new(
            $"{p.MassGrams.ToString(CultureInfo.InvariantCulture)} g is no mass of an animal.", $"Grams, above 0 and at most {Animal.MaxMassGrams}."),
        AnimalProblem.MassUnreadable p => new($"\"{TextRules.Shorten(p.Text, 60)}\" is not a number.", "Grams, as 1450 or 62.5."),
        AnimalProblem.StatusUnknown p => new($"\"{TextRules.Shorten(p.Text, 60)}\" is no status.", $"One of: {string.Join(", ", StatusWords.All)}."),
        AnimalProblem.SexUnknown p => new($"\"{TextRules.Shorten(p.Text, 60)}\" is no sex.", "m, f or u (unsexed)."),
        AnimalProblem.PossibleSiresNotSeveral => new(
            "Possible sires are two or more, and not together with a known sire.", "With only one, name him as the sire."),
        AnimalProblem.NotFound => new("The animal is not in the book, or is in the bin."),
        AnimalProblem.NoSuchTag p => new($"No animal has the id {TextRules.Shorten(p.Tag, 100)}.", p.Nearest is null ? null : $"Did you mean {p.Nearest}?"),
        AnimalProblem.ParentNotFound => new("A parent is not in the book, or is in the bin.", "Restore it, or choose another."),
        AnimalProblem.ParentOfWrongSex p => new(
            $"{p.Parent} is {Word(p.Sex)}.", p.Sex == Sex.Female ? "A sire is male, or unsexed." : "A dam is female, or unsexed."),
        AnimalProblem.BothSireAndDam p => new($"{p.Parent} is named as a sire and as a dam.", "An animal is one of the two."),
        AnimalProblem.SexContradictsOffspring p => new(
            $"It cannot be {Word(p.Sex)}: it is the {(p.Sex == Sex.Female ? "sire" : "dam")} of {p.Offspring}.",
            "Change the parent recorded there, or the sex."),
        AnimalProblem.ParentNotOlder p => new(
            $"{p.Parent} (hatched {p.ParentHatched.Words}) cannot be a parent of {p.Offspring} (hatched {p.OffspringHatched.Words}).",
            "A parent hatches before its offspring."),
        AnimalProblem.OwnAncestor p => new(
            p.Loop.Count == 1
                ? $"{p.Loop[0]} is named as its own parent."
                : $"{p.Loop[0]} would be its own ancestor: {string.Join(", child of ", p.Loop)}, child of {p.Loop[0]}.",
            "One of these parents is wrong."),
        AnimalProblem.ChangedSince p => new($"{p.Tag} was changed by somebody else meanwhile.", "Look at it again, then repeat the change."),
        AnimalProblem.HasOffspring p => new(
            $"{p.Tag} is a parent, or a possible one, of {Tags.List(p.Offspring)}.", "Give it another status instead, or change these first."),
        AnimalProblem.AlreadyBinned p => new($"{p.Tag} is in the bin already."),
        AnimalProblem.NotBinned p => new($"{p.Tag} is not in the bin."),
        AnimalProblem.Refused p => new(string.Join(' ', p.Problems.Select(found => Say(found.Problem)))),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(StatementProblem problem) => problem switch
    {
        StatementProblem.KindUnknown p => new($"{p.Kind} is no kind of statement."),
        StatementProblem.TextMissing => new("The statement does not say what.", "Write it as on a tub: 66% het Clown."),
        StatementProblem.TextNotWanted p => new($"An animal that shows nothing does not show \"{p.Text}\".", "Leave the text empty."),
        StatementProblem.TextInvalid p => new(
            "The text is too long or has characters that cannot be kept.", $"One line of at most {p.MaxLength} characters."),
        StatementProblem.TextUnreadable p => Unreadable(p.Text, p.Trade),
        StatementProblem.ByInvalid p => new(
            "Who says so is too long or has characters that cannot be kept.", $"One line of at most {p.MaxLength} characters."),
        StatementProblem.ConfidenceOutOfRange p => new(
            $"{p.Confidence.ToString(CultureInfo.InvariantCulture)} is not how sure one can be.", "Above 0 and at most 1; 1 is certain."),
        StatementProblem.TestNotFitting p => new(p.Kind == StatementKind.DnaTest
            ? "A DNA test needs its result, sensitivity and specificity."
            : "Only a DNA test has a test's result, sensitivity and specificity."),
        StatementProblem.TestRateOutOfRange p => new(
            $"{p.Rate.ToString(CultureInfo.InvariantCulture)} is no sensitivity or specificity.", "Above 0 and at most 1."),
        StatementProblem.NotFound => new("The statement is not in the book."),
        StatementProblem.AlreadyWithdrawn => new("The statement was withdrawn already."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(HappeningProblem problem) => problem switch
    {
        HappeningProblem.KindUnknown p => new($"\"{p.Kind}\" is nothing that can happen.", $"One of: {string.Join(", ", Enum.GetValues<HappeningKind>().Select(HappeningRules.Words))}."),
        HappeningProblem.InTheFuture p => new($"{p.When.Words} is yet to come.", "Write what has happened."),
        HappeningProblem.BeforeItHatched p => new($"{p.Tag} hatched {p.Hatched.Words}, after {p.When.Words}.", "Mend one of the two dates."),
        HappeningProblem.AmountNotFitting p => p.Unit is null
            ? new($"There is no number for \"{HappeningRules.Words(p.Kind)}\".", "Leave it empty.")
            : new(
                p.Amount is null ? $"How much is missing for \"{HappeningRules.Words(p.Kind)}\"." : $"{p.Amount.Value.ToString(CultureInfo.InvariantCulture)} {p.Unit} cannot be.",
                $"In {p.Unit}, above 0 and at most {p.Most.ToString(CultureInfo.InvariantCulture)}."),
        HappeningProblem.MateNotFitting p => HappeningRules.IsOfAPair(p.Kind)
            ? new("The other animal of the pair is missing.")
            : new($"\"{HappeningRules.Words(p.Kind)}\" is not about a pair.", "Leave the other animal out."),
        HappeningProblem.RoundRefused p => new(string.Join('\n', p.Lines.Select(line => $"{line.Tag}: {Say(line.Problem)}"))),
        HappeningProblem.MateNotFound => new("The other animal is not in the book, or is in the bin."),
        HappeningProblem.ClutchNotFitting p => HappeningRules.IsOfAClutch(p.Kind)
            ? new("The clutch is missing.", "Write it down on the page of the clutch.")
            : new($"\"{HappeningRules.Words(p.Kind)}\" is not about a clutch.", "Leave the clutch out."),
        HappeningProblem.ClutchNotFound => new("The clutch is not hers, not in the book, or in the bin."),
        HappeningProblem.WrittenAsClutch => new("What was laid is written down as a clutch."),
        HappeningProblem.BeforeItWasLaid p => new($"Clutch {p.Clutch} was laid {p.Laid.Words}, after {p.When.Words}.", "Mend one of the two dates."),
        HappeningProblem.NoPair p => new($"{p.Tag} and {p.Mate} are no male and female.", "Name an animal of the other sex."),
        HappeningProblem.NotOfAMale p => new($"{p.Tag} is male; \"{HappeningRules.Words(p.Kind)}\" is of a female."),
        HappeningProblem.TextNotFitting p => new("The text is missing, too long, or has characters that cannot be kept.", $"1 to {p.MaxLength} characters."),
        HappeningProblem.Refused p => new(string.Join(' ', p.Problems.Select(found => Say(found)))),
        HappeningProblem.NotFound => new("It is not in the book."),
        HappeningProblem.AlreadyWithdrawn => new("It was taken back already."),
        HappeningProblem.ChangedSince => new("It was changed by somebody else meanwhile.", "Look at it again, then repeat the change."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(ClutchProblem problem) => problem switch
    {
        ClutchProblem.TagInvalid p => new(
            p.Tag.Trim().Length == 0 ? "The id of the clutch is missing." : $"\"{TextRules.Shorten(p.Tag, 60)}\" cannot be an id.", $"An id is one line of 1 to {Tags.MaxLength} characters without {Tags.Separator}."),
        ClutchProblem.TagTaken p => new($"Another clutch has the id {p.Tag}.", "Ids differ by more than upper and lower case."),
        ClutchProblem.EggsOutOfRange p => new($"{p.Number} is no number of eggs.", $"0 to {p.Most}; leave it empty if they were not counted."),
        ClutchProblem.MassOutOfRange p => new($"{p.MassGrams.ToString(CultureInfo.InvariantCulture)} g is no mass of a clutch.", $"Grams of the good eggs together, above 0 and at most {p.Most.ToString(CultureInfo.InvariantCulture)}."),
        ClutchProblem.HatchedBeforeLaid p => new($"It was laid {p.Laid.Words} and cannot have hatched {p.Hatched.Words}.", "Mend one of the two dates."),
        ClutchProblem.InTheFuture p => new($"{p.When.Words} is yet to come.", "Write what has happened."),
        ClutchProblem.SireTwice => new("A male is named twice.", "Each possible sire once."),
        ClutchProblem.SireIsDam => new("The dam is named as a sire too.", "An animal is one of the two."),
        ClutchProblem.CountOutOfRange p => new($"{p.Count} is no number of young.", $"1 to {p.Most}."),
        ClutchProblem.SeenUnreadable p => Unreadable(p.Seen, p.Trade),
        ClutchProblem.NotesInvalid p => new("The notes are too long or have characters that cannot be kept.", $"At most {p.MaxLength} characters."),
        ClutchProblem.DamNotFound => new("The dam is not in the book, or is in the bin.", "Enter her first."),
        ClutchProblem.SireNotFound => new("A sire is not in the book, or is in the bin.", "Enter him first, or leave the sire out."),
        ClutchProblem.DamIsMale p => new($"{p.Tag} is male.", "A dam is female, or unsexed."),
        ClutchProblem.SireIsFemale p => new($"{p.Tag} is female.", "A sire is male, or unsexed."),
        ClutchProblem.ParentNotOlder p => new($"{p.Parent} (hatched {p.Hatched.Words}) cannot be a parent of eggs laid {p.Laid.Words}.", "Mend one of the two dates."),
        ClutchProblem.IncubatorNotFound => new("There is no such incubator in use.", "Enter it first, or leave it out."),
        ClutchProblem.NotFound p => new($"There is no clutch {TextRules.Shorten(p.Clutch, 100)}, or it is in the bin."),
        ClutchProblem.HasYoung p => new($"Clutch {p.Tag} has young in the book: {Tags.List(p.Young)}.", "Put those in the bin first."),
        ClutchProblem.AlreadyBinned p => new($"Clutch {p.Tag} is in the bin already."),
        ClutchProblem.NotBinned p => new($"Clutch {p.Tag} is not in the bin."),
        ClutchProblem.ChangedSince p => new($"Clutch {p.Tag} was changed by somebody else meanwhile.", "Look at it again, then repeat the change."),
        ClutchProblem.MoreThanLaid p => new($"That makes {p.Young} young out of {p.GoodEggs} good eggs in clutch {p.Tag}.", "Say so again if it is right: twins hatch, and eggs are miscounted."),
        ClutchProblem.YoungRefused p => new(string.Join(' ', p.Problems.Select(found => Say(found.Problem)))),
        ClutchProblem.Refused p => new(string.Join(' ', p.Problems.Select(Say))),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(IncubatorProblem problem) => problem switch
    {
        IncubatorProblem.NameInvalid p => new(p.Name.Trim().Length == 0 ? "The incubator has no name." : $"\"{TextRules.Shorten(p.Name, 60)}\" cannot be a name.", $"One line of 1 to {p.MaxLength} characters."),
        IncubatorProblem.NameTaken p => new($"Another incubator is called {p.Name}.", "Give this one another name."),
        IncubatorProblem.TemperatureOutOfRange p => new($"{p.Celsius.ToString(CultureInfo.InvariantCulture)} °C cannot be.", $"{Incubator.LeastCelsius:0} to {Incubator.MostCelsius:0} °C."),
        IncubatorProblem.HumidityOutOfRange p => new($"{p.Percent.ToString(CultureInfo.InvariantCulture)} % cannot be.", "0 to 100 %, relative humidity."),
        IncubatorProblem.LimitsSwapped => new("A lowest limit is above its highest.", "Swap them."),
        IncubatorProblem.NotesInvalid p => new("The text is too long or has characters that cannot be kept.", $"At most {p.MaxLength} characters."),
        IncubatorProblem.NothingRead => new("Neither a temperature nor a humidity is given.", "At least one of them."),
        IncubatorProblem.InTheFuture => new("The time is yet to come.", "Write what was read."),
        IncubatorProblem.NotFound p => new($"There is no incubator {TextRules.Shorten(p.Name, 60)} in use."),
        IncubatorProblem.ReadingNotFound => new("The reading is not in the book, or was taken back."),
        IncubatorProblem.InUse p => new($"{p.Name} holds eggs: {Tags.List(p.Clutches)}.", "Move them first."),
        IncubatorProblem.ReadAlready p => new(string.Create(CultureInfo.InvariantCulture, $"A reading of {p.When:yyyy-MM-dd HH:mm} UTC is in the book already."), "Take that one back first, or leave this one out."),
        IncubatorProblem.RowsRefused p => new(string.Join('\n', p.Rows.Select(row => Say(row.Problem)))),
        IncubatorProblem.ChangedSince p => new($"{p.Name} was changed by somebody else meanwhile.", "Look at it again, then repeat the change."),
        IncubatorProblem.Refused p => new(string.Join(' ', p.Problems.Select(found => Say(found)))),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(PhotoProblem problem) => problem switch
    {
        PhotoProblem.Empty => new("The picture is empty."),
        PhotoProblem.CaptionInvalid p => new("The caption is too long or has characters that cannot be kept.", $"At most {p.MaxLength} characters."),
        PhotoProblem.InTheFuture p => new($"{p.Taken.Words} is yet to come.", "Write when it was taken."),
        PhotoProblem.BeforeItHatched p => new($"{p.Tag} hatched {p.Hatched.Words}, after {p.Taken.Words}.", "Mend one of the two dates."),
        PhotoProblem.AlreadyThere p => new($"{p.Tag} has this picture already."),
        PhotoProblem.NotFound => new("The photo is not in the book."),
        PhotoProblem.AlreadyWithdrawn => new("The photo was taken back already."),
        PhotoProblem.ChangedSince => new("It was changed by somebody else meanwhile.", "Look at it again, then repeat the change."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(SettingProblem problem) => problem switch
    {
        SettingProblem.NameInvalid p => new($"\"{TextRules.Shorten(p.Name, 60)}\" is no name of a setting.", "Lower-case letters and hyphens."),
        SettingProblem.ValueInvalid p => new($"What is to be kept as {p.Name} is no JSON, or too long.", $"At most {p.MaxLength:N0} characters."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(SeasonProblem problem) => problem switch
    {
        SeasonProblem.YearOutOfRange p => new($"{p.Year} is no year of a season.", $"A year from {KeptSeason.FirstYear} to {KeptSeason.LastYear}."),
        SeasonProblem.GoalsInvalid p => new("The goals are no JSON object, or too long.", $"At most {p.MaxLength:N0} characters."),
        SeasonProblem.AnimalNotFound p => new($"{p.Name} is not in the book, or is in the bin.", "Restore it, or leave it out."),
        SeasonProblem.ChangedSince p => new($"The season of {p.Year} was changed meanwhile.", "Look at it again, then repeat the change."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(RouteProblem problem) => problem switch
    {
        RouteProblem.WantInvalid p => new("What is wanted is missing, too long, or has characters that cannot be kept.", $"One line of at most {p.MaxLength} characters."),
        RouteProblem.SeasonsInvalid p => new($"A route cannot run from {p.First} to {p.Last}.", "The last season is the first or a later one."),
        RouteProblem.TooLong p => new("The route is too long to be kept.", $"At most {p.MaxLength:N0} characters."),
        RouteProblem.NotFound => new("There is no such route in the book."),
        RouteProblem.AlreadyEnded p => new($"The route to {p.Want} has ended already."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(HistoryProblem problem) => problem switch
    {
        HistoryProblem.NoSuchDeed p => new($"There is no deed {p.Deed}."),
        HistoryProblem.ChangedSince p => new(
            $"Changed since deed {p.Deed}: {string.Join("; ", p.Records.Take(5).Select(Of))}{(p.Records.Count > 5 ? "; and more" : "")}.",
            "Undo the later deeds first."),
        HistoryProblem.StillUsed p => new($"{p.Label} is named by {p.UsedBy} now.", "Undo what was entered since first."),
        HistoryProblem.NameTaken p => new($"Another {p.Name} was kept since."),
        HistoryProblem.NoLongerAllowed p => new($"{p.Label} cannot be as it was before deed {p.Deed}. {Say(p.Because)}"),
        _ => new(problem.ToString()),
    };

    private static string Of(ChangedRecord record)
    {
        var fields = record.Fields.Count == 0 ? "" : $" ({FieldWords.Of(record.Fields)})";
        return $"{record.Label}{fields} by deed {record.LastDeed}, \"{record.LastWords}\"";
    }

    private static ProblemText Of(ImportProblem problem) => problem switch
    {
        ImportProblem.TooLarge p => new("The file is too large.", $"At most {p.MaxBytes / (1024 * 1024)} MiB; split it."),
        ImportProblem.NotUtf8 => new("The file is not UTF-8 text.", "Save it as \"CSV UTF-8\"."),
        ImportProblem.Empty p => new("The file is empty.", p.Names.Count == 0 ? "The first row names the columns." : $"The first row names the columns: {string.Join(", ", p.Names)}."),
        ImportProblem.TooManyColumns p => new(string.Create(CultureInfo.InvariantCulture, $"The header has {p.Found:N0} columns."), string.Create(CultureInfo.InvariantCulture, $"At most {p.Most:N0}.")),
        ImportProblem.TooManyRows p => new(string.Create(CultureInfo.InvariantCulture, $"The file has more than {p.Most:N0} rows."), "Split it."),
        ImportProblem.NoColumn p => new(
            $"No column holds the {p.Field}; the columns are: {TextRules.Shorten(string.Join(", ", p.Headers), 300)}.", $"Name one {p.Field}, or say which column it is."),
        ImportProblem.ColumnTwice p => new($"The columns {p.OtherHeader} and {p.Header} are both taken for {p.Field}.", "Leave one out or keep it as a note."),
        ImportProblem.NoSuchColumn p => new(string.Create(CultureInfo.InvariantCulture, $"The file has no column {p.Index + 1}.")),
        ImportProblem.QuotesBroken p => new(
            $"Quotation marks are not closed or not doubled: {TextRules.Shorten(p.Cell.Trim(), 60)}", "\"say \"\"hi\"\"\" for say \"hi\"."),
        ImportProblem.CellCount p => new(string.Create(
            CultureInfo.InvariantCulture, $"The row has {p.Found} cells, the header {p.Expected}."), "As many cells as the header; text with a delimiter stands in quotation marks."),
        ImportProblem.IdMissing => new("The id is missing.", "Every row has an id."),
        ImportProblem.CellMissing p => new($"The {p.Field} is missing.", "Every row has one."),
        ImportProblem.EggsUnreadable p => new($"\"{TextRules.Shorten(p.Text, 40)}\" is no number of eggs.", "A whole number; empty if they were not counted."),
        ImportProblem.CountedUnreadable p => new(
            $"\"{TextRules.Shorten(p.Text, 60)}\" cannot be read.", "A number and a look: 3 Pied, or 1.2 Pied for one male and two females; several with ; between."),
        ImportProblem.RowTwice p => new(string.Create(CultureInfo.InvariantCulture, $"Row {p.FirstRow} is about the same already."), "Leave one of the two out."),
        ImportProblem.ClutchInStock p => new($"Clutch {p.Tag} is in the book already, with other {string.Join(", ", p.Differences)}.", "Change it there, or mend the row."),
        ImportProblem.YoungOfOtherClutch p => new($"{p.Tag} is of clutch {p.Clutch} already.", "An animal hatched from one clutch."),
        ImportProblem.YoungOfOtherParents p => new($"{p.Tag} is in the book with other parents.", "Mend the parents of one of the two."),
        ImportProblem.FoodNotFitting p => new($"There is no food for \"{p.Kind}\".", "Leave it empty, or give the meal a row of its own."),
        ImportProblem.IdTwice p => new(string.Create(CultureInfo.InvariantCulture, $"Row {p.FirstRow} has the id {p.Tag} already."), "Each animal has one row and its own id."),
        ImportProblem.ParentUnknown p => new(
            $"{TextRules.Shorten(p.Tag, 100)} is neither in the file nor in the stock.",
            p.Nearest is null ? "Add a row for it, or leave the cell empty." : $"Did you mean {p.Nearest}? Else add a row for it, or leave the cell empty."),
        ImportProblem.SeveralDams p => new($"\"{TextRules.Shorten(p.Text, 60)}\" names several dams.", "One dam; only sires can be in doubt."),
        ImportProblem.SomeSiresWeighed p => new(
            $"\"{TextRules.Shorten(p.Text, 60)}\" gives some possible sires a chance and some none.", "A chance for each, A:0.7|B:0.3, or for none, A|B."),
        ImportProblem.SireWeightsNotOne p => new(
            $"The chances in \"{TextRules.Shorten(p.Text, 60)}\" sum to {p.Sum}.", "Each above 0 and together 1, for example A:0.7|B:0.3 or A:1/3|B:2/3."),
        ImportProblem.SireWeightsInStock p => new(
            "The stock keeps which sires are possible, without chances.", $"{p.Plain}; questions that read a file by itself take the chances as they are."),
        ImportProblem.CountUnreadable p => new(
            $"\"{TextRules.Shorten(p.Text, 40)}\" is no count.", string.Create(CultureInfo.InvariantCulture, $"How many young alike the row stands for, 1 to {p.Most}, or empty for one animal.")),
        ImportProblem.CountInStock p => new(
            string.Create(CultureInfo.InvariantCulture, $"The row stands for {p.Count} young, and the stock has a record for each animal."),
            "Give each young a row; questions that read a file by itself take the count as it is."),
        ImportProblem.ParentIsSeveral p => new(
            string.Create(CultureInfo.InvariantCulture, $"{p.Tag} stands for {p.Count} young, of which none can be told as the parent."),
            "Give the parent a row of its own, and count one less."),
        ImportProblem.StatementsUnreadable p => new($"The further statements cannot be read: {p.Reason}", "As the program writes them, or empty."),
        ImportProblem.AlreadyInStock p => new(
            $"{p.Tag} is in the stock already, with other {string.Join(", ", p.Differences)}.", "Change it there, or give this one another id."),
        ImportProblem.PhotoTwice p => new($"It is the same picture as {p.OtherFile}.", "Leave one of the two out."),
        ImportProblem.PhotosRefused p => new(string.Join('\n', p.Photos.Select(photo => $"{photo.File}: {Say(photo.Problem)}"))),
        ImportProblem.NothingNew p => new(p.Skipped == 0
            ? "The file has no rows."
            : string.Create(CultureInfo.InvariantCulture, $"Nothing new: all {p.Skipped:N0} are in the book as the file has them.")),
        ImportProblem.Refused p => new(string.Join('\n', p.Problems.Select(Say))),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(StorageProblem problem) => problem switch
    {
        StorageProblem.FolderUnusable p => new($"The data folder {p.Folder} cannot be used: {p.Reason}"),
        StorageProblem.Locked p => new($"{p.File} is held by another program.", "Close it and try again."),
        StorageProblem.MadeByNewerProgram p => new($"{p.File} was written by a newer version of this program.", "Use that version, or a backup."),
        StorageProblem.NotABook p => new($"{p.File} is not a book, or is damaged: {p.Reason}", "Restore a backup, or use another data folder or database."),
        StorageProblem.DiskFailed p => new($"{p.File} cannot be written: {p.Reason}", "See whether the disk is full."),
        StorageProblem.NotDurable p => new(
            $"{p.File} lies where a power cut could lose what was saved (journal {p.JournalMode}, synchronous {p.Synchronous}).",
            "Use a folder on a disk of this computer."),
        StorageProblem.ConnectionUnreadable => new(
            "The connection string of the database cannot be read, or names no server or no database.", "Host=localhost;Database=stock;Username=keeper."),
        StorageProblem.ServerUnusable p => new($"{p.Place} cannot be used: {p.Reason.TrimEnd('.')}."),
        StorageProblem.ServerNotDurable p => new(
            $"{p.Place} could lose in a power cut what was saved: {string.Join(", ", p.Settings)} {(p.Settings.Count == 1 ? "is" : "are")} off.",
            "Turn it on in the settings of the server."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(BackupProblem problem) => problem switch
    {
        BackupProblem.FileThere p => new($"{p.File} is there already.", "Give the backup another name."),
        BackupProblem.FileUnusable p => new($"{p.File} cannot be used: {p.Reason.TrimEnd('.')}."),
        BackupProblem.NotAsTheBook p => new($"What was written to {p.File} is not what it was copied from ({string.Join(", ", p.Tables)}); it was not kept.", "See whether the disk is sound."),
        BackupProblem.NotABackup p => new($"{p.File} is no backup of a book, or is damaged: {p.Reason.TrimEnd('.')}."),
        BackupProblem.MadeByNewerProgram p => new($"{p.File} was made by a newer version of this program.", "Use that version."),
        BackupProblem.BookChanged p => new(
            p.Last is null ? "The book was emptied meanwhile." : $"Something was done to the book meanwhile: deed {p.Last.Number}, \"{p.Last.Words}\".",
            "Look at what would be lost again."),
        _ => new(problem.ToString()),
    };

    private static ProblemText Of(BookFileProblem problem) => problem switch
    {
        BookFileProblem.FileThere p => new($"{p.File} is there already.", "Give the file another name."),
        BookFileProblem.FileUnusable p => new($"{p.File} cannot be used: {p.Reason.TrimEnd('.')}."),
        BookFileProblem.PhotosMissing p => new(
            string.Create(CultureInfo.InvariantCulture, $"The JSON names {p.Photos} photos, and their pictures are in the ZIP only."), "Take the ZIP, or say that the photos may stay behind."),
        BookFileProblem.BookNotEmpty p => new(
            string.Create(CultureInfo.InvariantCulture, $"The book is not empty: it holds {p.Animals} animals and {p.Deeds} deeds."), "Fill an empty book, or say that all it holds is to be replaced; it is backed up first."),
        BookFileProblem.Refused p => new(string.Join('\n', p.Faults)),
        _ => new(problem.ToString()),
    };

    // Where the one word of a text is what cannot be read, the reason names it.
    private static ProblemText Unreadable(string text, TradeTextProblem trade) =>
        new(trade.What.Contains($"'{text}'", StringComparison.Ordinal) ? trade.What : $"\"{text}\": {trade.What}", trade.WouldBeRight);

    private static string Word(Sex sex) => sex switch
    {
        Sex.Female => "female",
        Sex.Male => "male",
    };
}
