using System.Globalization;
using Clutchwright.Pedigrees.Kinship;
using Clutchwright.Peers;
using Clutchwright.Reference.Tests.Beliefs;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Fastlink;
using Clutchwright.Reference.Tests.R;
using Clutchwright.Reference.Tests.Toulbar2;
using Clutchwright.Testing.Pedigrees;

CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args is ["growth", var picture])
{
    File.WriteAllText(picture, Growth.Draw(Console.Out));
    return;
}

var longest = TimeSpan.FromSeconds(120);

Console.WriteLine("| question | other program | ours | theirs | times as fast | |");
Console.WriteLine("|---|---|---|---|---|---|");
foreach (var comparison in Kennels1273().Concat(Families()).Concat(Kinships()).Where(c => args.Length == 0 || args.Any(a => c.Peer == a || c.Question.Contains(a, StringComparison.Ordinal))))
{
    Console.WriteLine(await comparison.RunAsync());
}

IEnumerable<Comparison> Kennels1273()
{
    foreach (var share in new[] { 0.25, 0.15, 0.1, 0.05 })
    {
        var genetic = KennelCases.Recessive(10, 20, 5, share, 1);
        yield return new(
            $"a recessive, frequency {share}, in a kennel of {genetic.Family.Count} animals, all seen ({genetic.Seen[0].Count(s => s == 1)} visual): likelihood; ours also what each may carry",
            "toulbar2",
            () => ReadAll(EngineCase.Of(genetic), genetic).LogLikelihood,
            async () => await InTime(async () => (await Toulbar2Run.LogLikelihoodAsync(genetic, longest), null)),
            0.00051);
    }

    // It gives a likelihood only: what an animal may carry is the share of the likelihood without the allele in it, one run an animal.
    foreach (var share in new[] { 0.25, 0.15 })
    {
        var genetic = KennelCases.Recessive(10, 20, 5, share, 1);
        int[] animals = [.. Enumerable.Range(0, genetic.Family.Count).Where(i => genetic.Seen[0][i] == 0)];
        yield return new(
            $"the same, frequency {share}: the chance that each of the {animals.Length} not visual carries nothing, summed",
            "toulbar2",
            () =>
            {
                var engine = EngineCase.Of(genetic);
                return animals.Sum(i => engine.Copies(i, 0, 1).None);
            },
            async () => await InTime(async () =>
            {
                var all = await Toulbar2Run.LogLikelihoodAsync(genetic, longest);
                var sum = 0.0;
                foreach (var animal in animals)
                {
                    sum += Math.Exp(await Toulbar2Run.LogLikelihoodAsync(genetic, longest, animal) - all);
                }

                return (sum, null);
            }),
            0.002 * animals.Length)
        {
            Rounds = 1,
        };
    }
}

IEnumerable<Comparison> Families()
{
    foreach (var (name, size) in new[] { ("10 to 30 animals", FamilySize.Middle), ("16 to 24 animals and 5 to 8 loops", FamilySize.Looped) })
    {
        GeneticCase[] cases = [.. Enumerable.Range(1, 10).Select(seed => RandomCases.OneLocus(LocusKind.Recessive, false, size, (ulong)seed))];
        yield return new(
            $"ten families of {name}: the carrier risk of one animal; ours of all",
            "FASTLINK",
            () => cases.Sum(c => ReadAll(EngineCase.Of(c), c).Copies(c.Family.Count - 1, 0, 1).None),
            async () => await InTime(async () =>
            {
                var sum = 0.0;
                foreach (var c in cases)
                {
                    var risks = await FastlinkRun.RisksAsync(c, 0, 1, [c.Family.Count - 1]);
                    sum += risks.Copies.TryGetValue(c.Family.Count - 1, out var copies) ? copies.None : double.NaN;
                }

                return (sum, null);
            }),
            1e-4);
    }
}

IEnumerable<Comparison> Kinships()
{
    foreach (var family in new[] { Kennels.Kennel(1000), Kennels.Kennel(2000) })
    {
        var pedigree = family.ToPedigree();
        int[] all = [.. Enumerable.Range(0, family.Count)];
        yield return new(
            $"the kinship of every pair of {family.Count} animals",
            "R",
            () => KinshipReckoner.Of(Descent.Of(pedigree)).Matrix(all)[family.Count - 1, family.Count - 2],
            async () => await InTime(async () =>
            {
                var kinship = await KinshipByR.OfAsync(family);
                return (kinship[family.Count - 1, family.Count - 2], kinship.Seconds);
            }),
            1e-12);
    }
}

// Beliefs are read when they are asked for.
static EngineCase ReadAll(EngineCase engine, GeneticCase genetic)
{
    for (var animal = 0; animal < genetic.Family.Count; animal++)
    {
        engine.Copies(animal, 0, 1);
    }

    return engine;
}

static async Task<(double, double?)?> InTime(Func<Task<(double, double?)>> ask)
{
    try
    {
        return await ask();
    }
    catch (TimeoutException)
    {
        return null;
    }
}
