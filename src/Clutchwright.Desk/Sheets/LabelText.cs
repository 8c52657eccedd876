using System.Text.RegularExpressions;
using Clutchwright.Catalogue.TradeTexts;
using Clutchwright.Desk.Opened;
using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Genotypes;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Sheets;

/// <summary>Words a label so that it claims no more than is believed, and says on what each part rests (docs/model/labels.md).</summary>
internal sealed partial class LabelText(OpenCatalogue catalogue, StockState state, PedigreeBeliefs proven, DateOnly asOf)
{
    private const double Same = 1e-9;

    public LabelWords Of(StockAnimal animal)
    {
        var belief = animal.Belief.Genotype;
        var words = catalogue.Catalogue.Trade.Words(belief).Where(w => w.Kind != TradeWordKind.Sex).ToArray();
        var inSight = catalogue.Species.SeenOf(words.Where(w => w.IsSeen).Select(w => w.Form).OfType<Expression>().ToArray());
        var (parts, notTold) = (new List<LabelPart>(), new List<string>());
        foreach (var word in words)
        {
            foreach (var claim in Claims(catalogue.Catalogue.Trade, belief, word, word.IsSeen && (word.Form is null || inSight.Contains(word.Form))))
            {
                if (TradeFigure.Of(claim.Chance) is { } figure)
                {
                    parts.Add(Part(animal, claim, figure));
                }
                else
                {
                    notTold.Add(claim.Name);
                }
            }
        }

        // Beside what it carries the trade leaves out that it shows nothing; a label says that someone looked.
        if (parts.TrueForAll(p => !p.IsSeen) && Observations(animal).OfType<Observation.Seen>().Any(s => s.Forms.Count == 0))
        {
            parts.Insert(0, new(catalogue.Catalogue.NormalName, true, string.Empty, string.Empty, Probability.Certain, null, LabelBasis.Seen, null));
        }

        return new([.. parts.OrderBy(p => !p.IsSeen)], notTold, asOf);
    }

    // A word of the trade's text taken apart into what it claims, each with its own chance.
    private static IEnumerable<Claim> Claims(TradeText trade, GenotypeBelief belief, TradeWord word, bool isInSight)
    {
        if (word.Kind == TradeWordKind.Strands)
        {
            yield return new(Bare(word.Text), Rounded(word.Chance), false, null, null, g => null);
            yield break;
        }

        if (word.Allele is { } allele)
        {
            var isOpen = !word.Chance.IsCertain;
            var name = isOpen ? Bare(word.Text) : word.Text;
            yield return new(name, isOpen ? word.Chance : belief.ChanceOfCarrying(allele), false, allele, null, isOpen ? g => InWords(trade, g, allele) : g => g.ChanceOfCarrying(allele));
            yield break;
        }

        if (word.Form is not { IsVisible: true } form)
        {
            yield return new(word.Text, Probability.Certain, isInSight, null, null, g => null);
            yield break;
        }

        if (!word.Chance.IsCertain)
        {
            yield return new(Bare(word.Text), word.Chance, false, null, form, g => ChanceOf(g, form));
            yield break;
        }

        // "80% male maker Banana" tells a look and, apart from it, a strand that nobody sees.
        var maker = Maker().Match(word.Text);
        var shown = maker.Success ? maker.Groups["form"].Value : word.Text;
        var atLeast = AtLeast(belief, form);
        yield return new(atLeast.IsCertain ? shown : $"possible {shown}", atLeast, isInSight && atLeast.IsCertain, null, form, g => AtLeast(g, form));
        if (maker.Success)
        {
            var (group, likeliest) = (form.Locus.Group, belief[form.Locus.Group][0]);
            yield return new(
                $"{maker.Groups["maker"].Value} {shown}",
                likeliest.Weight,
                false,
                null,
                null,
                g => g.Sex == belief.Sex ? g[group].Where(w => w.Value == likeliest.Value).Select(w => w.Weight).FirstOrDefault() : Probability.Impossible)
            {
                Group = group,
            };
        }
    }

    private LabelPart Part(StockAnimal animal, Claim claim, int figure)
    {
        var group = claim.Allele?.Locus.Group ?? claim.Form?.Locus.Group ?? claim.Group;
        var isSampled = group is not null && animal.Belief.StandardErrors.ContainsKey(group);
        var without = proven[animal.Key];
        var unheard = claim.In(without.Genotype);
        var geneId = claim.Allele?.Id ?? claim.Form?.Id;
        if (claim.IsSeen)
        {
            var (basis, note, shortNote) = SeenBasis(animal, claim, unheard);
            return new(claim.Name, true, note, shortNote, claim.Chance, null, basis, geneId);
        }

        var told = claim.Allele is { } told1 ? Own(animal, StatementKind.Told, told1) : null;
        if (claim.Chance.IsCertain && !isSampled)
        {
            return unheard is { IsCertain: true } && claim.Allele is { } allele && IsHet(claim.Name)
                ? new($"100% {claim.Name}", false, Proof(animal, allele), "proven", claim.Chance, 100, LabelBasis.Proven, geneId)
                : unheard is { IsCertain: true }
                    ? new(claim.Name, false, "by the records of its kin", "proven", claim.Chance, null, LabelBasis.Proven, geneId)
                    : new(claim.Name, false, told is null ? "from what was told" : Said("told", told), "told", claim.Chance, null, LabelBasis.Told, geneId);
        }

        var chance = claim.Chance.IsCertain ? "sampled" : OddsText.Ratio(claim.Chance) ?? OddsText.Percent(claim.Chance);
        var rests = unheard is { } other && Math.Abs(other.Value - claim.Chance.Value) <= Same ? LabelBasis.Computed
            : unheard is null ? LabelBasis.Computed
            : LabelBasis.Told;
        var how = rests == LabelBasis.Computed ? "computed" : told is not null && IsAsTold(animal, told, claim) ? Said("told", told) : "computed from what was told";
        var text = claim.Chance.IsCertain ? claim.Name : $"{figure}% {claim.Name}";
        var shortest = claim.Chance.Exact is { } exact && exact.Denominator <= OddsText.LargestDenominator ? $"{exact.Numerator}/{exact.Denominator}" : chance;
        return new(
            text,
            false,
            $"{chance}, {how}{(isSampled ? ", sampled" : string.Empty)}",
            rests == LabelBasis.Told ? $"{shortest}, told" : shortest,
            claim.Chance,
            claim.Chance.IsCertain ? null : figure,
            rests,
            geneId);
    }

    private (LabelBasis Basis, string Note, string Short) SeenBasis(StockAnimal animal, Claim claim, Probability? unheard)
    {
        var observations = Observations(animal);
        var looked = observations.OfType<Observation.Seen>().ToArray();
        if (claim.Form is null ? looked.Length > 0 : looked.Any(s => s.Forms.Contains(claim.Form)))
        {
            return (LabelBasis.Seen, string.Empty, string.Empty);
        }

        var told = claim.Form is { } form ? Own(animal, StatementKind.Told, form) : null;
        return told is not null ? (LabelBasis.Told, Said("told", told), "told")
            : unheard is { IsCertain: true } ? (LabelBasis.Proven, "by descent, not looked at", "not looked at")
            : claim.Form is null ? (LabelBasis.Computed, "not looked at", "not looked at")
            : (LabelBasis.Told, "from what was told", "told");
    }

    private string Proof(StockAnimal animal, Allele allele)
    {
        if (Own(animal, StatementKind.ProvenByBreeding, allele) is { } bred)
        {
            return Said("proven by breeding", bred);
        }

        var record = proven.Animals.First(a => a.Key == animal.Key);
        if (new[] { record.Sire, record.Dam }.OfType<string>().Any(p => HasTwo(p, allele)))
        {
            return "by descent";
        }

        return proven.Animals.Any(a => (a.Sire == animal.Key || a.Dam == animal.Key) && HasTwo(a.Key, allele)) ? "proven by its young" : "by the records of its kin";
    }

    private bool HasTwo(string key, Allele allele) =>
        proven[key].Genotype.PairsAt(allele.Locus) is [{ Value: var (first, second) }] && first == allele.Index && second == allele.Index;

    // Whether the chance is what the statement says, and nothing moved it since.
    private bool IsAsTold(StockAnimal animal, Statement told, Claim claim)
    {
        var observations = Observations(animal);
        return animal.Statements.Zip(observations)
            .Where(s => s.First.StatementId == told.StatementId)
            .Select(s => s.Second)
            .OfType<Observation.Said>()
            .Any(s => claim.In(s.Reading) is { } said && Math.Abs(said.Value - claim.Chance.Value) <= Same);
    }

    private Statement? Own(StockAnimal animal, StatementKind kind, Allele allele) => Own(animal, kind, r => !r.ChanceOfCarrying(allele).IsImpossible);

    private Statement? Own(StockAnimal animal, StatementKind kind, Expression form) => Own(animal, kind, r => AtLeast(r, form).IsCertain);

    private Statement? Own(StockAnimal animal, StatementKind kind, Func<GenotypeBelief, bool> says)
    {
        var observations = Observations(animal);
        return animal.Statements.Zip(observations)
            .Where(s => s.First.Kind == kind && s.Second is Observation.Said said && says(said.Reading))
            .Select(s => s.First)
            .FirstOrDefault();
    }

    private IReadOnlyList<Observation> Observations(StockAnimal animal) => state.Record[animal.Key].Read.Observations;

    private static string Said(string how, Statement statement)
    {
        var by = statement.By is { } who ? $"{how} by {who}" : how == "told" ? "told by the breeder or seller" : how;
        return statement.When is { } when ? $"{by}, {when.Words}" : by;
    }

    // The chance that the pair of a locus holds all mutant alleles of the pairs that make a form.
    private static Probability AtLeast(GenotypeBelief belief, Expression form)
    {
        var pairs = belief.PairsAt(form.Locus);
        var least = pairs
            .Where(p => form.Locus.ExpressionOf(p.Value.First, p.Value.Second) == form)
            .Select(p => p.Value)
            .OrderBy(p => (p.First == 0 ? 0 : 1) + (p.Second == 0 ? 0 : 1))
            .FirstOrDefault();
        return least == default
            ? Probability.Impossible
            : pairs.Count == 1 ? Probability.Certain
            : Rounded(pairs.Where(p => Holds(p.Value, least)).Aggregate(Probability.Impossible, (sum, p) => sum + p.Weight));
    }

    // The chance of the same words of another belief.
    private static Probability InWords(TradeText trade, GenotypeBelief belief, Allele allele) =>
        trade.Words(belief).FirstOrDefault(w => w.Allele == allele) is { Chance.IsCertain: false } word ? word.Chance : belief.ChanceOfCarrying(allele);

    private static Probability ChanceOf(GenotypeBelief belief, Expression form) => belief.PairsAt(form.Locus)
        .Where(p => form.Locus.ExpressionOf(p.Value.First, p.Value.Second) == form)
        .Aggregate(Probability.Impossible, (sum, p) => sum + p.Weight);

    private static bool Holds((int First, int Second) pair, (int First, int Second) least)
    {
        var left = new List<int> { pair.First, pair.Second };
        return new[] { least.First, least.Second }.Where(a => a != 0).All(left.Remove);
    }

    // All possibilities of a locus sum to 1 but for rounding.
    private static Probability Rounded(Probability chance) => chance.IsCloseTo(Probability.Certain) ? Probability.Certain : chance;

    private static bool IsHet(string name) => name.StartsWith("het ", StringComparison.Ordinal);

    // Without the percentage that the trade's text puts before it.
    private static string Bare(string text) => Percentage().Replace(text, string.Empty);

    [GeneratedRegex(@"^[\d.]+% ")]
    private static partial Regex Percentage();

    [GeneratedRegex(@"^([\d.]+% )?(?<maker>(male|female) maker) (?<form>.+)$", RegexOptions.ExplicitCapture)]
    private static partial Regex Maker();

    private sealed record Claim(string Name, Probability Chance, bool IsSeen, Allele? Allele, Expression? Form, Func<GenotypeBelief, Probability?> In)
    {
        public LinkageGroup? Group { get; init; }
    }
}
