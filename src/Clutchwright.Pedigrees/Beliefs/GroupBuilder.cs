namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Puts the records of all animals together at one linkage group.</summary>
/// <param name="frame">The animals.</param>
/// <param name="model">The group.</param>
/// <param name="choices">What has been decided about the records.</param>
/// <param name="hearing">Which records are heard; <c>null</c>: all. What founders start with is always heard.</param>
internal sealed class GroupBuilder(PedigreeFrame frame, GroupModel model, RecordChoices choices, RecordHearing? hearing = null)
{
    // What a record counts for that cannot be true beside the others, in halvings: of what was told less than two alleles let in, of what somebody
    // could check for himself far less again, so that words give way first.
    private const int SoftWords = 101;
    private const int SoftFact = 145;

    private readonly StateSpace _space = model.Space;
    private readonly int _group = model.Space.Group.Index;

    /// <summary>Gets records in doubt that speak of several groups: they weigh in one go, by whether the record as a whole is right.</summary>
    public List<DoubtedRecord> Doubted { get; } = [];

    /// <summary>Gets the record that each founder, or animal taken by its label, starts with, by node; those that start without any are left out.</summary>
    public Dictionary<int, int> Starts { get; } = [];

    /// <summary>Puts the records together.</summary>
    public GroupNetwork Build()
    {
        int[] sires = frame.Sires, dams = frame.Dams;
        var possible = frame.PossibleSires;
        var weights = new double[frame.Count][];
        for (var node = 0; node < frame.Count; node++)
        {
            var isCut = choices.IsCut(node, _group);
            var isNeeded = hearing is null || hearing.IsNeeded(node);
            if ((isCut || !isNeeded) && !frame.IsFounder(node))
            {
                if (ReferenceEquals(sires, frame.Sires))
                {
                    (sires, dams, possible) = ([.. sires], [.. dams], [.. possible]);
                }

                (sires[node], dams[node], possible[node]) = (PedigreeFrame.None, PedigreeFrame.None, []);
            }

            weights[node] = !isNeeded ? Any(node) : frame.IsFounder(node) || isCut ? Founder(node) : Offspring(node);
        }

        return new(frame, _space, sires, dams, possible, weights);
    }

    private double[] Offspring(int node)
    {
        var record = frame.Records[node]!;
        double[]? product = null;
        var isOwn = false;
        for (var i = 0; i < record.Observations.Count; i++)
        {
            if (hearing is not null && !hearing.IsHeard(node, i))
            {
                continue;
            }

            if (record.Observations[i] is Observation.Said { Basis: StatementBasis.Told } told && model.IsChance(told))
            {
                continue;
            }

            if (Weighed(node, i) is { } weights)
            {
                Multiply(ref product, ref isOwn, weights);
            }
        }

        return Finish(node, product, isOwn);
    }

    private double[] Founder(int node)
    {
        var record = frame.Records[node];
        if (record is null)
        {
            return IsRaised(node) ? Anything(node) : model.Prior.AtRandom(frame.Sexes[node], SpokenByYoung(node));
        }

        double[]? product = Start(node, record, out var used);
        var isOwn = true;
        if (used >= 0)
        {
            Starts[node] = used;
        }

        for (var i = 0; i < record.Observations.Count; i++)
        {
            if (i != used && (hearing is null || hearing.IsHeard(node, i)) && Weighed(node, i) is { } weights)
            {
                Multiply(ref product, ref isOwn, weights);
            }
        }

        return product!;
    }

    // Of an animal that nothing hangs on: whatever it is, the rest is the same.
    private double[] Any(int node)
    {
        var weights = new double[_space.Count];
        var state = 0;
        while (_space.Sexes[state] is { } own && frame.Sexes[node] is { } known && own != known)
        {
            state++;
        }

        weights[state] = 1.0;
        return weights;
    }

    private double[] Start(int node, RecordedAnimal record, out int used)
    {
        var sex = frame.Sexes[node];
        var isRaised = IsRaised(node);
        var random = isRaised ? Anything(node) : model.Prior.AtRandom(sex, null);
        var seenAt = -1;
        var testAt = -1;
        for (used = 0; used < record.Observations.Count; used++)
        {
            switch (record.Observations[used])
            {
                case Observation.Said said when model.Weights.Speaks(said):
                    return Doubt(node, used, model.Prior.FromWords(said.Reading, sex), random);
                case Observation.Seen seen when seenAt < 0 && seen.Reading[_space.Group] is not [{ Value.IsWild: true }]:
                    seenAt = used;
                    break;
                case Observation.DnaTest { Copies: > 0 } test when testAt < 0 && test.Allele.Locus.Group == _space.Group:
                    testAt = used;
                    break;
            }
        }

        // Of all that founders may then carry the fewest copies that make the look hold.
        if (seenAt >= 0 && record.Observations[seenAt] is Observation.Seen look && model.Prior.FromLook(look, sex) is { } looked)
        {
            used = seenAt;
            return Doubt(node, used, isRaised ? FounderPrior.Scaled([.. random], model.Weights.OfTrueLook(look)) : looked, random);
        }

        used = -1;
        if (testAt < 0 || model.Prior.BeforeTest((Observation.DnaTest)record.Observations[testAt], sex) is not { } tested)
        {
            return random;
        }

        for (var s = 0; isRaised && s < tested.Length; s++)
        {
            tested[s] = tested[s] > 0.0 ? tested[s] : random[s];
        }

        return tested;
    }

    private bool IsRaised(int node) => choices.IsRaised(_group, frame.Kin[node]);

    // The start by a record that may be wrong: then it is as if nothing had been recorded.
    private double[] Doubt(int node, int index, double[] start, double[] otherwise)
    {
        var sure = frame.Records[node]!.Observations[index].Confidence.Value;
        var isSoft = choices.IsSoft(frame.Records[node]!.Key, index);
        if (choices.IsShared(node, index) && !isSoft)
        {
            Doubted.Add(new(node, index, start, otherwise, sure, 1.0 - sure, IsStart: true));
            return Ones();
        }

        var doubted = sure == 1.0 ? start : Mix(sure, start, 1.0 - sure, otherwise);
        var soft = isSoft ? SoftOf(frame.Records[node]!.Observations[index]) : 0.0;
        return isSoft ? Mix(1.0 - soft, doubted, soft, Anything(node)) : doubted;
    }

    // The weights of a record by state; null where it says nothing here or is weighed through a doubt of its own.
    private double[]? Weighed(int node, int index)
    {
        var observation = frame.Records[node]!.Observations[index];
        if (!model.Weights.Speaks(observation))
        {
            return null;
        }

        var weights = model.Weights.Of(observation);
        var sure = observation.Confidence.Value;
        var isSoft = choices.IsSoft(frame.Records[node]!.Key, index);
        if (choices.IsShared(node, index) && !isSoft)
        {
            Doubted.Add(new(node, index, weights, Ones(), (2.0 * sure) - 1.0, 1.0 - sure, IsStart: false));
            return null;
        }

        var doubted = sure == 1.0 ? weights : [.. weights.Select(w => (sure * w) + ((1.0 - sure) * (1.0 - w)))];
        return isSoft ? Mix(1.0 - SoftOf(observation), doubted, SoftOf(observation), Ones()) : doubted;
    }

    private double[] Finish(int node, double[]? weights, bool isOwn)
    {
        var sex = frame.Sexes[node];
        if (weights is not null && model.IsSurvivalEven && (!_space.Group.IsSex || sex is null))
        {
            return weights;
        }

        var result = weights is null ? Ones() : isOwn ? weights : (double[])weights.Clone();
        var survival = model.SurvivalOf(sex);
        for (var s = 0; s < result.Length; s++)
        {
            result[s] *= _space.Sexes[s] is { } own && sex is { } known && own != known ? 0.0 : survival[s];
        }

        return result;
    }

    private double[] Anything(int node) => model.Prior.AtRandom(frame.Sexes[node], (_, _) => true, FounderPrior.Tiny);

    private Func<int, int, bool> SpokenByYoung(int unknown)
    {
        var spoken = new List<Func<int, int, bool>>();
        foreach (var node in frame.YoungOfUnknown(unknown))
        {
            foreach (var observation in frame.Records[node]!.Observations)
            {
                switch (observation)
                {
                    case Observation.Seen seen:
                        spoken.Add(model.Prior.Spoken(seen.Reading));
                        break;
                    case Observation.Said said when !(said.Basis == StatementBasis.Told && model.IsChance(said)):
                        spoken.Add(model.Prior.Spoken(said.Reading));
                        break;
                    case Observation.DnaTest { Copies: > 0 } test when test.Allele.Locus.Group == _space.Group:
                        spoken.Add((locus, allele) => locus == test.Allele.Locus.IndexInGroup && allele == test.Allele.Index);
                        break;
                }
            }
        }

        return (locus, allele) => spoken.Exists(s => s(locus, allele));
    }

    private double SoftOf(Observation observation) => Math.ScaleB(
        1.0, -((observation is Observation.Said { Basis: StatementBasis.Told } ? SoftWords : SoftFact) >> choices.Eased));

    private double[] Ones()
    {
        var ones = new double[_space.Count];
        Array.Fill(ones, 1.0);
        return ones;
    }

    private static double[] Mix(double first, double[] a, double second, double[] b)
    {
        var mixed = new double[a.Length];
        for (var s = 0; s < mixed.Length; s++)
        {
            mixed[s] = (first * a[s]) + (second * b[s]);
        }

        return mixed;
    }

    private static void Multiply(ref double[]? product, ref bool isOwn, double[] weights)
    {
        if (product is null)
        {
            (product, isOwn) = (weights, false);
            return;
        }

        if (!isOwn)
        {
            (product, isOwn) = ((double[])product.Clone(), true);
        }

        for (var s = 0; s < product.Length; s++)
        {
            product[s] *= weights[s];
        }
    }
}
