using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;
using Clutchwright.Proofs.Hets;
using Clutchwright.Reference.Tests.Cases;
using Clutchwright.Reference.Tests.Fastlink;
using Clutchwright.Testing.Pedigrees;

namespace Clutchwright.Reference.Tests.Proofs;

/// <summary>Het proofs from counts of young, against FASTLINK's risks from whole families.</summary>
public sealed class HetProofByFastlinkTests
{
    [Fact]
    public async Task Posterior_OfARandomProof_IsTheRiskInTheFamily()
    {
        var random = new SplitMix64(7);
        for (var round = 0; round < 40; round++)
        {
            var family = new FamilyBuilder([new LocusModel([0.98, 0.02], (a, _) => a)]);
            var animal = PossibleHet(family, Sex.Male);
            var positions = new List<int>();
            var mates = new List<TestMate>();
            for (var i = random.Below(3); i >= 0; i--)
            {
                var normals = random.Below(9);
                var (mate, position) = random.Below(3) switch
                {
                    0 => (TestMate.Visual(normals), family.Founder(Sex.Female, 1)),
                    1 => (TestMate.Het(normals), Het(family)),
                    _ => (TestMate.PossibleHet(Probability.Ratio(2, 3), normals), PossibleHet(family, Sex.Female)),
                };
                mates.Add(mate);
                positions.Add(position);
                Hatch(family, animal, position, normals);
            }

            var proof = HetProof.Of(Probability.Ratio(2, 3), mates);
            var genetic = family.Build($"het proof {round}");
            var risks = await FastlinkRun.RisksAsync(genetic, 0, 1, [animal, .. positions]);

            Near.Check(risks.Copies[animal].One, proof.Posterior.Value, 1e-5, genetic);
            for (var i = 0; i < mates.Count; i++)
            {
                var risk = risks.Copies[positions[i]];
                Near.Check(risk.One + risk.Two, proof.MateCarries(i).Value, 1e-5, genetic);
            }
        }
    }

    // One normal young of a pair that has given a visual: 2/3.
    private static int PossibleHet(FamilyBuilder family, Sex sex)
    {
        var (sire, dam) = (family.Founder(Sex.Male, 0), family.Founder(Sex.Female, 0));
        family.Young(Sex.Male, sire, dam, 1);
        return family.Young(sex, sire, dam, 0);
    }

    // A normal female with a visual by a visual male.
    private static int Het(FamilyBuilder family)
    {
        var dam = family.Founder(Sex.Female, 0);
        family.Young(Sex.Male, family.Founder(Sex.Male, 1), dam, 1);
        return dam;
    }

    private static void Hatch(FamilyBuilder family, int sire, int dam, int normals)
    {
        // A pair without young would not hang together with the rest; one that was not looked at says nothing.
        if (normals == 0)
        {
            family.Young(Sex.Male, sire, dam);
        }

        for (var i = 0; i < normals; i++)
        {
            family.Young(i % 2 == 0 ? Sex.Male : Sex.Female, sire, dam, 0);
        }
    }
}
