using Clutchwright.Desk.Opened;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Looks;
using Clutchwright.Pedigrees.Beliefs;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Statements;

namespace Clutchwright.Desk.Leaving;

/// <summary>What was seen of one animal, locus by locus, from statements that were made for certain.</summary>
internal sealed class SeenAtLoci
{
    private readonly Species _species;
    private readonly IReadOnlyList<Expression>? _forms;

    private SeenAtLoci(Species species, IReadOnlyList<Expression>? forms, IReadOnlyList<string> problems) => (_species, _forms, Problems) = (species, forms, problems);

    /// <summary>Gets what was seen and is not told: texts that cannot be read, and statements that are not certain.</summary>
    public IReadOnlyList<string> Problems { get; }

    public static SeenAtLoci Of(OpenCatalogue catalogue, Animal animal)
    {
        var seen = animal.Statements.Where(s => s.Kind is StatementKind.Seen or StatementKind.LookedAtNormal).ToList();
        var certain = seen.Where(s => s.Confidence == 1.0).ToList();
        var read = StatementReader.Read(catalogue, animal, certain);
        var looks = read.Observations.OfType<Observation.Seen>().ToList();
        return new(
            catalogue.Species,
            looks.Count == 0 ? null : [.. looks.SelectMany(l => l.Forms).Distinct()],
            [.. read.Problems, .. seen.Except(certain).Select(s => $"\"{s}\" is not certain")]);
    }

    /// <summary>What the locus shows; <c>null</c>: not known, since nobody looked, something hides it, or two statements differ.</summary>
    public Expression? At(Locus locus)
    {
        if (_forms is null)
        {
            return null;
        }

        Expression[] here = [.. _forms.Where(f => ReferenceEquals(f.Locus, locus))];
        return here is [var form] ? form
            : here.Length > 1 || locus.Expressions.Skip(1).Any(e => e.TellableFrom > AgeStage.Hatchling || _species.IsHidden(e, _forms)) ? null
            : locus.Expressions[0];
    }

    /// <summary>The only pair of alleles that can show this at its locus, the lower number first; <c>null</c>: several can.</summary>
    public static (int First, int Second)? PairOf(Expression shown)
    {
        (int, int)? found = null;
        for (var first = 0; first < shown.Locus.Alleles.Count; first++)
        {
            for (var second = first; second < shown.Locus.Alleles.Count; second++)
            {
                if (shown.Locus.ExpressionsOf(first, second).Any(e => ReferenceEquals(e.Value, shown) && e.Weight.Value > 0.0))
                {
                    if (found is not null)
                    {
                        return null;
                    }

                    found = (first, second);
                }
            }
        }

        return found;
    }
}
