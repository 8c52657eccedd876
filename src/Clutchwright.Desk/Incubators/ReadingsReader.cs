using Clutchwright.Stock;
using Clutchwright.Stock.Import;
using Clutchwright.Stock.Incubators;

namespace Clutchwright.Desk.Incubators;

/// <summary>A logger's file as it was read.</summary>
internal sealed record ReadReadings(IReadOnlyList<ReadingColumn> Columns, IReadOnlyList<(int Line, ReadingEntry Entry)> Rows, bool AsksForDates, IReadOnlyList<ReadingProblem> Problems);

/// <summary>Reads a logger's file: finds the columns and the form of its times, then every row.</summary>
internal sealed class ReadingsReader(TemperatureUnit unit, TimeZoneInfo zone)
{
    private const int MostRows = 200_000;

    public static readonly IReadOnlyList<string> Fields = ["time", "date", "celsius", "fahrenheit", "humidity", LeftOut];

    private const string LeftOut = "leave out";

    private readonly List<ReadingProblem> _problems = [];

    public ReadReadings Read(ReadingsFile file)
    {
        var read = CsvTable.Read(file.File.Span);
        if (!read.IsDone)
        {
            return new([], [], false, read.Problem is ImportProblem.Refused refused
                ? [.. refused.Problems.Select(p => new ReadingProblem(p.Line, null, ProblemWords.Say(p.Problem).ToString()))]
                : [new(0, null, ProblemWords.Say(read.Problem).ToString())]);
        }

        var table = read.Value;
        var fields = Map(table.Header, file.Mapping);
        ReadingColumn[] columns = [.. table.Header.Select((header, i) => new ReadingColumn(header, fields[i] == LeftOut ? null : fields[i], table.Rows.Select(r => r.Cells[i]).FirstOrDefault(c => c.Length > 0)))];
        var order = Order(file.Dates);
        CheckColumns(fields, table);
        if (_problems.Count > 0)
        {
            return new(columns, [], false, _problems);
        }

        var times = table.Rows.Select(r => string.Join(' ', new[] { Cell(r, "date"), Cell(r, "time") }.Where(c => c.Length > 0))).ToArray();
        order ??= Guess(times);
        if (order is null && times.FirstOrDefault(t => LocalTime.Doubtful(t) is not null) is { } doubtful)
        {
            _problems.Add(new(0, null, $"It cannot be told which number of \"{doubtful}\" is the day. Say whether the day (dmy) or the month (mdy) goes first."));
            return new(columns, [], true, _problems);
        }

        var rows = new List<(int, ReadingEntry)>();
        DateTime? before = null;
        for (var i = 0; i < table.Rows.Count; i++)
        {
            if (Row(table.Rows[i], times[i], order, before) is { } entry)
            {
                rows.Add((table.Rows[i].Line, entry));
                before = entry.TakenAt;
            }
        }

        return new(columns, rows, false, _problems);

        string Cell(CsvRow row, string field) => Array.IndexOf(fields, field) is >= 0 and var at ? row.Cells[at] : string.Empty;

        ReadingEntry? Row(CsvRow row, string time, DateOrder? by, DateTime? last)
        {
            var wrong = _problems.Count;
            var at = LocalTime.Read(time, by, zone, last);
            if (at is null)
            {
                var header = table.Header[Array.IndexOf(fields, "time")];
                _problems.Add(new(row.Line, header, time.Length == 0 ? "The time is missing." : $"\"{time}\" is no time that the clock here has shown. {LocalTime.WouldBeRight}"));
            }

            var celsius = Figure("celsius", text => TemperatureText.Read(text, TemperatureUnit.Celsius))
                ?? Figure("fahrenheit", text => TemperatureText.Read(text, TemperatureUnit.Fahrenheit));
            var humidity = Figure("humidity", TemperatureText.ReadHumidity);
            return _problems.Count > wrong ? null : new ReadingEntry { TakenAt = at!.Value, Celsius = celsius, HumidityPercent = humidity };

            double? Figure(string field, Func<string, double?> number)
            {
                var text = Cell(row, field);
                if (text.Length == 0)
                {
                    return null;
                }

                if (number(text) is { } value)
                {
                    return value;
                }

                _problems.Add(new(row.Line, table.Header[Array.IndexOf(fields, field)], $"\"{text}\" is no number. Write 31.5, or leave it empty."));
                return null;
            }
        }
    }

    private string[] Map(IReadOnlyList<string> headers, IReadOnlyDictionary<string, string?>? mapping)
    {
        var fields = new string[headers.Count];
        Array.Fill(fields, LeftOut);
        foreach (var (header, word) in mapping ?? new Dictionary<string, string?>())
        {
            var at = headers.ToList().FindIndex(h => string.Equals(h, header.Trim(), StringComparison.OrdinalIgnoreCase));
            var field = string.IsNullOrWhiteSpace(word) ? LeftOut : Fields.FirstOrDefault(f => string.Equals(f, word.Trim(), StringComparison.OrdinalIgnoreCase));
            if (at < 0)
            {
                _problems.Add(new(0, null, $"The file has no column \"{header}\". Its columns: {string.Join(", ", headers)}."));
            }
            else if (field is null)
            {
                _problems.Add(new(0, header, $"\"{word}\" is nothing that a column can be read as. One of: {string.Join(", ", Fields)}."));
            }
            else
            {
                fields[at] = field;
            }
        }

        for (var i = 0; i < headers.Count; i++)
        {
            var header = headers[i];
            if (mapping?.Keys.Any(k => string.Equals(k.Trim(), header, StringComparison.OrdinalIgnoreCase)) != true
                && FieldOf(header) is { } known && !fields.Contains(known, StringComparer.Ordinal)
                && !(known is "celsius" or "fahrenheit" && fields.Any(f => f is "celsius" or "fahrenheit")))
            {
                fields[i] = known;
            }
        }

        return fields;
    }

    /// <summary>By its name: <c>Date/Time</c>, <c>Temperature (°C)</c>, <c>temp_f</c>, <c>RH %</c>.</summary>
    private string? FieldOf(string header)
    {
        var key = string.Concat(header.ToLowerInvariant().Where(char.IsLetterOrDigit));
        if (key.StartsWith("temp", StringComparison.Ordinal) || key is "celsius" or "fahrenheit" or "c" or "f")
        {
            var isFahrenheit = key.Contains("fahrenheit", StringComparison.Ordinal) || key.EndsWith('f');
            var isCelsius = key.Contains("celsius", StringComparison.Ordinal) || key.EndsWith('c');
            return isFahrenheit || (!isCelsius && unit == TemperatureUnit.Fahrenheit) ? "fahrenheit" : "celsius";
        }

        return key.Contains("humid", StringComparison.Ordinal) || key.StartsWith("rh", StringComparison.Ordinal) ? "humidity"
            : key is "date" or "day" ? "date"
            : key.Contains("time", StringComparison.Ordinal) || key is "when" or "readat" ? "time"
            : null;
    }

    private void CheckColumns(string[] fields, CsvTable table)
    {
        var headers = string.Join(", ", table.Header);
        if (!fields.Contains("time", StringComparer.Ordinal))
        {
            _problems.Add(new(0, null, $"No column is read as the time. The columns: {headers}."));
        }

        if (!fields.Any(f => f is "celsius" or "fahrenheit" or "humidity"))
        {
            _problems.Add(new(0, null, $"No column is read as a temperature or a humidity. The columns: {headers}."));
        }

        foreach (var twice in fields.Where(f => f != LeftOut).GroupBy(f => f).Where(g => g.Count() > 1))
        {
            _problems.Add(new(0, null, $"Two columns are read as {twice.Key}. Leave one out."));
        }

        if (fields.Contains("celsius", StringComparer.Ordinal) && fields.Contains("fahrenheit", StringComparer.Ordinal))
        {
            _problems.Add(new(0, null, "One column is read as celsius and one as fahrenheit. Leave one out."));
        }

        if (table.Rows.Count is 0 or > MostRows)
        {
            _problems.Add(new(0, null, table.Rows.Count == 0 ? "The file has no rows." : $"The file has more than {MostRows:N0} rows. Take it in parts."));
        }
    }

    private DateOrder? Order(string? dates)
    {
        switch (dates?.Trim().ToLowerInvariant())
        {
            case null or "":
                return null;
            case "dmy":
                return DateOrder.DayFirst;
            case "mdy":
                return DateOrder.MonthFirst;
            default:
                _problems.Add(new(0, null, $"\"{dates}\" is no order of dates. Write dmy (the day first) or mdy (the month first)."));
                return null;
        }
    }

    /// <summary>A number over 12 is no month.</summary>
    private static DateOrder? Guess(IEnumerable<string> times)
    {
        var doubtful = times.Select(LocalTime.Doubtful).OfType<(int First, int Second)>().ToArray();
        var (dayFirst, monthFirst) = (Array.Exists(doubtful, d => d.First > 12), Array.Exists(doubtful, d => d.Second > 12));
        return dayFirst == monthFirst ? null : dayFirst ? DateOrder.DayFirst : DateOrder.MonthFirst;
    }
}
