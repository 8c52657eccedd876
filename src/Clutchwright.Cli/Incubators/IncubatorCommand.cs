using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Clutchwright.Cli.Animals;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Incubators;
using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Cli.Incubators;

/// <summary><c>incubator</c>: where eggs are kept warm, and what was read off it.</summary>
internal static class IncubatorCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("incubator", "Where eggs are kept warm: limits, readings, time outside of them.")
        {
            List(common, terminal),
            Add(common, terminal),
            Edit(common, terminal),
            Read(common, terminal),
            ReadingsCommand.Create(common, terminal),
            Retire(common, terminal),
            Unit(common, terminal),
        };

    public static Argument<string> Name() => new("NAME") { Description = "The incubator, by its name." };

    private static Command List(CommonOptions common, Terminal terminal)
    {
        var command = new Command("list", "The incubators, what was read off each last, and which clutches are in it since when.");
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var all = await questions.GetRequiredService<ListIncubators>().RunAsync(cancel);
            if (common.IsJson(asked))
            {
                terminal.Send(new() { ["incubators"] = JsonShapes.Array(all, Json) });
                return ExitCode.Answered;
            }

            var unit = await questions.GetRequiredService<TemperatureSetting>().UnitAsync(cancel);
            var page = new Page(terminal);
            page.Heading("Incubators");
            if (all.Count == 0)
            {
                page.Line("None is written down yet.");
            }

            page.Table(
                ["incubator", "limits", "last read", "when", "clutches", ""],
                [.. all.Select(i => new[]
                {
                    Page.Seen(i.Name),
                    Page.Plain(Limits(i.Limits, unit)),
                    Page.Plain(i.Last is { } last ? Reading(last, unit) : "nothing"),
                    Page.Plain(i.Last is { } read ? Instant(read.TakenAt) : null),
                    Page.Plain(string.Join(", ", i.Clutches.Select(c => $"{c.Tag} since {Day(c.Since)}"))),
                    Page.Plain(i.IsRetired ? "out of use" : string.Join(' ', i.Remarks)),
                })]);
            page.Send();
            return ExitCode.Answered;
        });
        return command;
    }

    private static Command Add(CommonOptions common, Terminal terminal)
    {
        var (name, who) = (Name(), StockCommand.Who());
        var limits = new LimitOptions();
        var command = new Command("add", "Write down an incubator.") { name, who };
        limits.AddTo(command);
        command.SetAction(async (asked, cancel) =>
        {
            var form = limits.Form(asked, new IncubatorForm(asked.GetRequiredValue(name), null, null, null, null, null));
            await using var questions = common.Open(asked);
            return HistoryCommand.Done(common.IsJson(asked), terminal, await questions.GetRequiredService<WriteIncubator>().AddAsync(form, asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Edit(CommonOptions common, Terminal terminal)
    {
        var (name, who) = (Name(), StockCommand.Who());
        var rename = new Option<string?>("--name") { Description = "Call it so from now on.", HelpName = "NAME" };
        var limits = new LimitOptions();
        var command = new Command("edit", "Change the name, limits or notes of an incubator; what is not named stays.") { name, rename, who };
        limits.AddTo(command);
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            var found = await questions.GetRequiredService<ListIncubators>().FindAsync(asked.GetRequiredValue(name), cancel);
            if (found.Value is not { } known)
            {
                return terminal.AskedWrongly(found.Problems, _ => null);
            }

            var form = limits.Form(asked, new IncubatorForm(
                asked.GetValue(rename) ?? known.Name,
                Celsius(known.Limits.LowestCelsius),
                Celsius(known.Limits.HighestCelsius),
                Invariant(known.Limits.LowestHumidityPercent),
                Invariant(known.Limits.HighestHumidityPercent),
                known.Notes));
            return HistoryCommand.Done(common.IsJson(asked), terminal, await questions.GetRequiredService<WriteIncubator>().EditAsync(known.Id, known.Version, form, asked.GetRequiredValue(who), cancel));
        });
        return command;

        static string? Celsius(double? celsius) => celsius is { } known ? $"{Invariant(known)} C" : null;
        static string? Invariant(double? number) => number?.ToString("R", CultureInfo.InvariantCulture);
    }

    private static Command Read(CommonOptions common, Terminal terminal)
    {
        var (name, who) = (Name(), StockCommand.Who());
        var temperature = new Option<string?>("--temperature") { Description = "The temperature, in your unit or with its sign: 31.5, 88.7F.", HelpName = "N" };
        var humidity = new Option<string?>("--humidity") { Description = "Relative humidity in percent.", HelpName = "N" };
        var when = new Option<string?>("--at") { Description = "When: 2026-05-01 14:05, in the time of this place. Default: now.", HelpName = "TIME" };
        var text = new Option<string?>("--text") { Description = "What else is to be said.", HelpName = "TEXT" };
        var command = new Command("read", "Write down what you read off an incubator.") { name, temperature, humidity, when, text, who };
        command.SetAction(async (asked, cancel) =>
        {
            var form = new ReadingForm(asked.GetValue(temperature), asked.GetValue(humidity), asked.GetValue(when), asked.GetValue(text));
            await using var questions = common.Open(asked);
            return HistoryCommand.Done(common.IsJson(asked), terminal, await questions.GetRequiredService<WriteIncubator>().ReadAsync(asked.GetRequiredValue(name), form, asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Retire(CommonOptions common, Terminal terminal)
    {
        var (name, who) = (Name(), StockCommand.Who());
        var back = new Option<bool>("--back") { Description = "Put it back into use." };
        var command = new Command("retire", "Put an incubator out of use; its readings stay.") { name, back, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            return HistoryCommand.Done(common.IsJson(asked), terminal, await questions.GetRequiredService<WriteIncubator>().RetireAsync(asked.GetRequiredValue(name), asked.GetValue(back), asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    private static Command Unit(CommonOptions common, Terminal terminal)
    {
        var unit = new Argument<string>("UNIT") { Description = "C or F." };
        var who = StockCommand.Who();
        var command = new Command("unit", "Set in what you read temperatures.") { unit, who };
        command.SetAction(async (asked, cancel) =>
        {
            await using var questions = common.Open(asked);
            return HistoryCommand.Done(common.IsJson(asked), terminal, await questions.GetRequiredService<TemperatureSetting>().KeepAsync(asked.GetRequiredValue(unit), asked.GetRequiredValue(who), cancel));
        });
        return command;
    }

    internal static string Reading(ReadingWords reading, TemperatureUnit unit) => string.Join(", ", new[]
    {
        reading.Celsius is { } celsius ? TemperatureText.Of(celsius, unit) : null,
        reading.HumidityPercent is { } percent ? TemperatureText.Humidity(percent) : null,
    }.OfType<string>());

    internal static string Instant(DateTimeOffset at) => at.ToLocalTime().ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    internal static JsonObject Json(ReadingWords reading) => new()
    {
        ["at"] = reading.TakenAt.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture),
        ["celsius"] = reading.Celsius,
        ["humidityPercent"] = reading.HumidityPercent,
        ["text"] = reading.Text,
    };

    internal static JsonObject Json(IncubatorWords incubator) => new()
    {
        ["name"] = incubator.Name,
        ["lowestCelsius"] = incubator.Limits.LowestCelsius,
        ["highestCelsius"] = incubator.Limits.HighestCelsius,
        ["lowestHumidityPercent"] = incubator.Limits.LowestHumidityPercent,
        ["highestHumidityPercent"] = incubator.Limits.HighestHumidityPercent,
        ["notes"] = incubator.Notes,
        ["retired"] = incubator.IsRetired,
        ["last"] = incubator.Last is { } last ? Json(last) : null,
        ["readings"] = incubator.Readings,
        ["clutches"] = JsonShapes.Array(incubator.Clutches, c => new JsonObject
        {
            ["id"] = c.Tag,
            ["dam"] = c.Dam,
            ["eggs"] = c.Eggs,
            ["laid"] = c.Laid,
            ["since"] = Day(c.Since),
        }),
        ["remarks"] = JsonShapes.Array(incubator.Remarks),
    };

    private static string Limits(IncubatorLimits limits, TemperatureUnit unit)
    {
        var parts = new[]
        {
            Range(limits.LowestCelsius, limits.HighestCelsius, v => TemperatureText.Number(v, unit), TemperatureText.Sign(unit)),
            Range(limits.LowestHumidityPercent, limits.HighestHumidityPercent, v => v.ToString("0.#", CultureInfo.InvariantCulture), "%"),
        };
        return string.Join(", ", parts.OfType<string>());

        static string? Range(double? low, double? high, Func<double, string> number, string sign) =>
            low is null && high is null ? null : $"{(low is { } l ? number(l) : "…")} to {(high is { } h ? number(h) : "…")} {sign}";
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    /// <summary>The limits of an incubator as options.</summary>
    private sealed class LimitOptions
    {
        private readonly Option<string?> _lowest = new("--lowest") { Description = "The lowest temperature, in your unit or with its sign: 30.5, 87F.", HelpName = "N" };
        private readonly Option<string?> _highest = new("--highest") { Description = "The highest temperature.", HelpName = "N" };
        private readonly Option<string?> _dry = new("--lowest-humidity") { Description = "The lowest relative humidity in percent.", HelpName = "N" };
        private readonly Option<string?> _wet = new("--highest-humidity") { Description = "The highest relative humidity in percent.", HelpName = "N" };
        private readonly Option<string?> _notes = new("--notes") { Description = "Anything else.", HelpName = "TEXT" };

        public void AddTo(Command command)
        {
            foreach (var option in new[] { _lowest, _highest, _dry, _wet, _notes })
            {
                command.Add(option);
            }
        }

        public IncubatorForm Form(ParseResult asked, IncubatorForm before) => before with
        {
            Lowest = asked.GetValue(_lowest) ?? before.Lowest,
            Highest = asked.GetValue(_highest) ?? before.Highest,
            LowestHumidity = asked.GetValue(_dry) ?? before.LowestHumidity,
            HighestHumidity = asked.GetValue(_wet) ?? before.HighestHumidity,
            Notes = asked.GetValue(_notes) ?? before.Notes,
        };
    }
}
