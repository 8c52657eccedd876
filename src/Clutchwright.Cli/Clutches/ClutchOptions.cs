using System.CommandLine;
using Clutchwright.Desk.Clutches;

namespace Clutchwright.Cli.Clutches;

/// <summary>What can be said of a clutch on the command line.</summary>
internal sealed class ClutchOptions
{
    private readonly Option<string?> _tag = new("--id") { Description = "The id of the clutch. Default: the next by the scheme of clutch ids.", HelpName = "ID" };
    private readonly Option<string?> _sire = new("--sire") { Description = "The male; several with | between where one of them is the father; empty: not known. Default: those that were with her last.", HelpName = "ID" };
    private readonly Option<string?> _laid = new("--on") { Description = "When it was laid: a date, or words such as 'about 3 March 2026'. Default: today.", HelpName = "DATE" };
    private readonly Option<string?> _eggs = new("--eggs") { Description = "Good eggs.", HelpName = "N" };
    private readonly Option<string?> _slugs = new("--slugs") { Description = "Slugs.", HelpName = "N" };
    private readonly Option<string?> _mass = new("--mass") { Description = "Mass of the good eggs together, in grams.", HelpName = "G" };
    private readonly Option<string?> _incubator = new("--incubator") { Description = "The incubator it is in.", HelpName = "NAME" };
    private readonly Option<string?> _hatched = new("--hatched") { Description = "When the young came out; empty: they have not.", HelpName = "DATE" };
    private readonly Option<string[]> _counted = new("--counted") { Description = "Young of which only the number is kept: '3 Pied', or '1.2 Pied' for one male and two females. Any number of times; given, these are all.", HelpName = "TEXT" };
    private readonly Option<string?> _notes = new("--notes") { Description = "Notes.", HelpName = "TEXT" };
    private bool _isChange;

    public void AddTo(Command command, bool isChange)
    {
        _isChange = isChange;
        foreach (var option in new Option[] { _tag, _sire, _laid, _eggs, _slugs, _mass, _incubator, _notes })
        {
            command.Add(option);
        }

        if (isChange)
        {
            command.Add(_hatched);
            command.Add(_counted);
        }
    }

    /// <summary>The form with what is said; what is not said stays.</summary>
    public ClutchForm Read(ParseResult asked, ClutchForm form) => form with
    {
        Tag = asked.GetValue(_tag) ?? form.Tag,
        Sire = asked.GetValue(_sire) ?? form.Sire,
        Laid = asked.GetValue(_laid) ?? form.Laid,
        GoodEggs = asked.GetValue(_eggs) ?? form.GoodEggs,
        Slugs = asked.GetValue(_slugs) ?? form.Slugs,
        MassGrams = asked.GetValue(_mass) ?? form.MassGrams,
        Incubator = asked.GetValue(_incubator) ?? form.Incubator,
        Notes = asked.GetValue(_notes) ?? form.Notes,
        Hatched = _isChange ? asked.GetValue(_hatched) ?? form.Hatched : null,
        Counted = _isChange && asked.GetValue(_counted) is { Length: > 0 } lines ? string.Join('\n', lines) : form.Counted,
    };
}
