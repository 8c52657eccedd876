using System.Globalization;
using Clutchwright.Catalogue;
using Clutchwright.Catalogue.Looks;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;

namespace Clutchwright.Desk.Looks;

/// <summary>Reads a query of a look: phrases between commas, each of one thing. The grammar is in docs/how-to/looks.md.</summary>
internal sealed class LookQueryReader
{
    public const string Where = "query";

    private const string Example = "Write for example: pattern strong yellow, white patches, holds.";

    private static readonly string[] Openers =
    [
        "ground", "pattern", "eye", "form", "head", "saying", "white", "with", "without", "holds", "fades", "comes with age", "adult", "subadult",
        "juvenile", "hatchling", "from my stock", "no harm", "no white", "up to 2 genes",
    ];

    private readonly SpeciesCatalogue _catalogue;
    private readonly ToneReader _tones;
    private readonly double _within;
    private readonly List<AskedWrongly> _problems;
    private readonly LookQuery _query = new();

    private LookQueryReader(SpeciesCatalogue catalogue, ToneReader tones, double within, List<AskedWrongly> problems) =>
        (_catalogue, _tones, _within, _problems) = (catalogue, tones, within, problems);

    public static LookQuery Read(SpeciesCatalogue catalogue, ToneReader tones, string text, double within, List<AskedWrongly> problems)
    {
        var reader = new LookQueryReader(catalogue, tones, within, problems);
        var phrases = QueryPhrase.Split(text);
        foreach (var phrase in phrases)
        {
            reader.Read(phrase);
        }

        if (phrases.Count == 0)
        {
            problems.Add(new(Where, $"Say what is to be seen. {Example}"));
        }
        else if (problems.Count == 0 && !reader._query.SaysALook)
        {
            problems.Add(new(
                Where,
                reader._query.Course is LookCourse.Comes or LookCourse.Fades
                    ? $"Say also which tone {(reader._query.Course == LookCourse.Comes ? "comes with age. Write for example: ground light gray, comes with age." : "fades. Write for example: pattern strong yellow, fades.")}"
                    : $"Nothing is said of what is to be seen. {Example}"));
        }
        else if (problems.Count == 0 && reader._query is { Course: LookCourse.Comes or LookCourse.Fades, Tones.Count: 0 })
        {
            problems.Add(new(Where, "Only of tones is it recorded when they come and go: name one. Write for example: ground light gray, comes with age."));
        }

        return reader._query;
    }

    private void Read(QueryPhrase phrase)
    {
        if (!ReadAge(phrase) && !ReadLimits(phrase) && !ReadWhite(phrase) && !ReadGenotype(phrase) && !ReadWords(phrase))
        {
            ReadTone(phrase);
        }
    }

    private bool ReadAge(QueryPhrase phrase)
    {
        LookCourse? course = phrase.Key switch
        {
            "holds" or "hold" or "holds from hatchling to adult" or "from hatchling to adult" or "holds with age" or "at every age" => LookCourse.Holds,
            "comes" or "comes with age" or "comes in" or "comes later" => LookCourse.Comes,
            "fades" or "fades with age" => LookCourse.Fades,
            _ => null,
        };
        AgeStage? stage = course is null ? StageOf(phrase.Words[^1].Key) : null;
        if (stage is not null && phrase.Words.SkipLast(1).Any(w => w.Key is not ("at" or "as" or "a" or "an" or "of" or "the")))
        {
            stage = null;
        }

        if (course is null && stage is null)
        {
            return false;
        }

        if (_query.Course is not null || _query.Stage is not null)
        {
            Wrong(phrase, $"Two ages are asked for; '{phrase.Text}' is the second. Write one age, or holds, comes with age or fades.");
        }

        (_query.Course, _query.Stage) = (course ?? LookCourse.AtOneAge, stage);
        return true;
    }

    private bool ReadLimits(QueryPhrase phrase)
    {
        switch (phrase.Key)
        {
            case "from my stock" or "my stock" or "from stock":
                return _query.IsFromStock = true;
            case "no harm" or "without harm" or "harmless":
                return _query.IsWithoutHarm = true;
        }

        if (phrase.Words[^1].Key is not ("gene" or "genes") || phrase.Words.Count is < 2 or > 4)
        {
            return false;
        }

        var number = phrase.Words[^2].Key switch { "one" or "1" or "single" => 1, "two" or "2" => 2, "three" or "3" => 3, _ => 0 };
        if (number == 0)
        {
            Wrong(phrase, $"A composed making has 1 to {LookWish.GreatestGenes} genes; write up to 2 genes.");
        }

        _query.Genes = number;
        return true;
    }

    private bool ReadWhite(QueryPhrase phrase)
    {
        var words = phrase.Words.Select(w => w.Key).ToList();
        if (!words.Contains("white"))
        {
            return false;
        }

        words.RemoveAll(w => w is "white" or "of" or "extent" or "is");
        var (orMore, orLess) = (Take(words, "or", "more") || Take(words, "at", "least"), Take(words, "or", "less") || Take(words, "at", "most"));
        WhiteExtent? extent = words is [var word]
            ? word switch
            {
                "no" or "none" or "without" => WhiteExtent.None,
                "traces" or "trace" => WhiteExtent.Traces,
                "patches" or "patch" or "patched" => WhiteExtent.Patches,
                "most" or "mostly" => WhiteExtent.Most,
                "all" or "wholly" => WhiteExtent.All,
                "some" => WhiteExtent.Traces,
                _ => null,
            }
            : null;
        if (extent is not { } found)
        {
            // A tone: white, yellowish white, ground white.
            return false;
        }

        if (_query.White is not null)
        {
            Wrong(phrase, "How much is white is said twice.");
        }

        _query.White = orLess ? (WhiteExtent.None, found) : orMore || words is ["some"] ? (found, WhiteExtent.All) : (found, found);
        return true;
    }

    private bool ReadGenotype(QueryPhrase phrase)
    {
        if (phrase.First is not ("with" or "without") || phrase.Part(1) is not { } name)
        {
            return false;
        }

        var allele = _catalogue.FindAllele(name.Text)?.Allele;
        if (allele is null)
        {
            var nearest = _catalogue.NearestNames(name.Text);
            _problems.Add(new(
                Where,
                _catalogue.FindForm(name.Text) is null && _catalogue.FindCombination(name.Text) is null
                    ? $"The catalogue has no gene '{name.Text}'."
                    : $"'{name.Text}' is of more than one allele; name one gene after {phrase.First}.",
                name.At,
                name.Length,
                nearest));
            return true;
        }

        if (_query.Genotype.Any(g => g.Allele == allele))
        {
            Wrong(name, $"{allele.Name} is named twice.");
        }

        _query.Genotype.Add((allele, phrase.First == "with"));
        return true;
    }

    private bool ReadWords(QueryPhrase phrase)
    {
        var (place, from) = phrase.First switch
        {
            "form" => (WordPlace.Form, 1),
            "head" => (WordPlace.Head, 1),
            "saying" or "says" => (WordPlace.Anywhere, 1),
            "ground" or "pattern" when phrase.Words.Count > 1 && phrase.Words[1].Key is "saying" or "says" =>
                (phrase.First == "ground" ? WordPlace.Ground : WordPlace.Form, 2),
            _ => ((WordPlace)0, 0),
        };
        if (from == 0)
        {
            return false;
        }

        if (phrase.Part(from) is { } rest)
        {
            _query.Words.Add((new(place, [.. rest.Words.Select(w => w.Key)]), $"{phrase.Part(0, from)!.Text} “{rest.Text}”"));
        }
        else
        {
            Wrong(phrase, $"Which words? Write for example: {phrase.Text} flame.");
        }

        return true;
    }

    private void ReadTone(QueryPhrase phrase)
    {
        var (places, said, from) = phrase.First switch
        {
            "ground" => (new[] { TonePlace.Ground }, "ground ", 1),
            "pattern" => ([TonePlace.Pattern], "pattern ", 1),
            "eye" or "eyes" => ([TonePlace.Eye], "eye ", 1),
            _ => ([TonePlace.Ground, TonePlace.Pattern], "ground or pattern ", 0),
        };
        var within = _within;
        var to = phrase.Words.Count;
        if (to - from >= 2 && phrase.Words[to - 2].Key == "within")
        {
            if (!double.TryParse(phrase.Words[to - 1].Key, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out within) || within is <= 0.0 or > 100.0)
            {
                Wrong(phrase.Part(to - 1)!, $"'{phrase.Words[to - 1].Key}' is no distance; write a number above 0 and up to 100, for example within 8.");
                return;
            }

            to -= 2;
        }

        if (phrase.Part(from, to) is not { } tone)
        {
            Wrong(phrase, $"Which tone? Write for example: {(from == 0 ? "pattern" : phrase.First)} strong yellow, or a colour as #C8A040.");
        }
        else if (_tones.Read(tone.Key) is var (colours, words))
        {
            var text = string.Create(CultureInfo.InvariantCulture, $"{said}{words} (within {within:0.##})");
            _query.Tones.Add((new(places, colours, within), text));
        }
        else
        {
            _problems.Add(NoTone(tone, from > 0, phrase));
        }
    }

    private AskedWrongly NoTone(QueryPhrase tone, bool hasPlace, QueryPhrase phrase)
    {
        if (tone.First.StartsWith('#'))
        {
            return new(Where, $"'{tone.Text}' is no colour; write six digits as in #C8A040.", tone.At, tone.Length);
        }

        if (!hasPlace && _catalogue.FindAllele(tone.Text) is { } gene)
        {
            return new(Where, $"'{tone.Text}' is a gene: write with {gene.Allele.Name}.", tone.At, tone.Length, [$"with {gene.Allele.Name}"]);
        }

        var near = _tones.Nearest(tone.Key);
        if (!hasPlace && near.Count == 0)
        {
            near = NearWords.Of(phrase.Key, Openers);
        }

        return new(
            Where,
            $"'{tone.Text}' is no tone: write a colour as #C8A040 or its name, as moderate orange; for words of the description write form flame, head pale or saying blush.",
            tone.At,
            tone.Length,
            near);
    }

    private static AgeStage? StageOf(string word) => word switch
    {
        "hatchling" or "hatchlings" or "hatching" => AgeStage.Hatchling,
        "juvenile" or "juveniles" => AgeStage.Juvenile,
        "subadult" or "subadults" => AgeStage.Subadult,
        "adult" or "adults" or "grown" => AgeStage.Adult,
        _ => null,
    };

    private static bool Take(List<string> words, string first, string second)
    {
        var at = words.IndexOf(first);
        if (at < 0 || at + 1 >= words.Count || words[at + 1] != second)
        {
            return false;
        }

        words.RemoveRange(at, 2);
        return true;
    }

    private void Wrong(QueryPhrase at, string text) => _problems.Add(new(Where, text, at.At, at.Length));
}
