namespace Clutchwright.Pedigrees.Beliefs;

/// <summary>Puts the records of all animals together at one linkage group.</summary>
/// <param name="frame">The animals.</param>
/// <param name="model">The group.</param>
/// <param name="choices">What has been decided about the records.</param>
internal sealed class GroupBuilder(PedigreeFrame frame, GroupModel model, RecordChoices choices)
{
    // What a record counts for that cannot be true beside the others: of what was told less than two alleles let in, of what somebody
    // could check for himself far less again, so that words give way first.
    private const double SoftWords = FounderPrior.Tiny * FounderPrior.Tiny / 2.0;
    private const double SoftFact = SoftWords / (1L << 44);

    private readonly StateSpace _space = model.Space;
    private readonly int _group = model.Space.Group.Index;

    /// <summary>Gets records in doubt that speak of several groups: they weigh in one go, by whether the record as a whole is right.</summary>
    public List<DoubtedRecord> Doubted { get; } = [];

    /// <summary>Puts the records together.</summary>
    public GroupNetwork Build()
    {
        int[] sires = frame.Sires, dams = frame.Dams;
        var possible = frame.PossibleSires;
        var weights = new double[frame.Count][];
        for (var node = 0; node < frame.Count; node++)
        {
            var isCut = choices.IsCut(node, _group);
            if (isCut && !frame.IsFounder(node))
            {
                if (ReferenceEquals(sires, frame.Sires))
                {
                    (sires, dams, possible) = ([.. sires], [.. dams], [.. possible]);
                }

                (sires[node], dams[node], possible[node]) = (PedigreeFrame.None, PedigreeFrame.None, []);
            }

            weights[node] = frame.IsFounder(node) || isCut ? Founder(node) : Offspring(node);
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
            return Living(model.Prior.AtRandom(frame.Sexes[node], choices.Level(_group) > 0 ? All : SpokenByYoung(node)));
        }

        double[]? product = Living(Start(node, record, out var used));
        var isOwn = true;
        for (var i = 0; i < record.Observations.Count; i++)
        {
            if (i != used && Weighed(node, i) is { } weights)
            {
                Multiply(ref product, ref isOwn, weights);
            }
        }

        return product!;
    }

    // A founder is one of those that lived.
    private double[] Living(double[] start)
    {
        if (model.IsSurvivalEven)
        {
            return start;
        }

        var total = 0.0;
        for (var s = 0; s < start.Length; s++)
        {
            start[s] *= model.Survival[s];
            total += start[s];
        }

        for (var s = 0; s < start.Length && total > 0.0; s++)
        {
            start[s] /= total;
        }

        return start;
    }

    private double[] Start(int node, RecordedAnimal record, out int used)
    {
        var sex = frame.Sexes[node];
        var isLevel0 = choices.Level(_group) == 0;
        var random = model.Prior.AtRandom(sex, isLevel0 ? null : All);
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
                case Observation.DnaTest test when testAt < 0 && test.Allele.Locus.Group == _space.Group:
                    testAt = used;
                    break;
            }
        }

        if (isLevel0 && seenAt >= 0 && model.Prior.FromLook((Observation.Seen)record.Observations[seenAt], sex) is { } looked)
        {
            used = seenAt;
            return Doubt(node, used, looked, random);
        }

        used = -1;
        return isLevel0 && testAt >= 0 && model.Prior.BeforeTest((Observation.DnaTest)record.Observations[testAt], sex) is { } tested ? tested : random;
    }

    // The start by a record that may be wrong: then it is as if nothing had been recorded.
    private double[] Doubt(int node, int index, double[] start, double[] otherwise)
    {
        var sure = frame.Records[node]!.Observations[index].Confidence.Value;
        if (choices.IsSoft(frame.Records[node]!.Key, index))
        {
            var soft = SoftOf(frame.Records[node]!.Observations[index]);
            return Mix(1.0 - soft, start, soft, model.Prior.AtRandom(frame.Sexes[node], All));
        }

        if (sure == 1.0)
        {
            return start;
        }

        if (choices.IsShared(node, index))
        {
            Doubted.Add(new(node, index, start, otherwise, sure, 1.0 - sure));
            return Ones();
        }

        return Mix(sure, start, 1.0 - sure, otherwise);
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
        if (choices.IsSoft(frame.Records[node]!.Key, index))
        {
            var soft = SoftOf(observation);
            return Mix(1.0 - soft, weights, soft, Ones());
        }

        var sure = observation.Confidence.Value;
        if (sure == 1.0)
        {
            return weights;
        }

        if (choices.IsShared(node, index))
        {
            Doubted.Add(new(node, index, weights, Ones(), (2.0 * sure) - 1.0, 1.0 - sure));
            return null;
        }

        return [.. weights.Select(w => (sure * w) + ((1.0 - sure) * (1.0 - w)))];
    }

    private double[] Finish(int node, double[]? weights, bool isOwn)
    {
        var sex = frame.Sexes[node];
        if (weights is not null && model.IsSurvivalEven && (!_space.Group.IsSex || sex is null))
        {
            return weights;
        }

        var result = weights is null ? Ones() : isOwn ? weights : (double[])weights.Clone();
        for (var s = 0; s < result.Length; s++)
        {
            result[s] *= _space.Sexes[s] is { } own && sex is { } known && own != known ? 0.0 : model.Survival[s];
        }

        return result;
    }

    private bool All(int locus, int allele) => true;

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

    private static double SoftOf(Observation observation) =>
        observation is Observation.Said { Basis: StatementBasis.Told } ? SoftWords : SoftFact;

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

/// <summary>A record that is in doubt as a whole, at one group.</summary>
/// <param name="Node">The animal's node.</param>
/// <param name="Index">The place in the list of observations.</param>
/// <param name="IfRight">The weights by state if it is right.</param>
/// <param name="IfWrong">The weights by state if it is not.</param>
/// <param name="Right">The weight of its being right.</param>
/// <param name="Wrong">The weight of its being wrong.</param>
internal sealed record DoubtedRecord(int Node, int Index, double[] IfRight, double[] IfWrong, double Right, double Wrong);
