namespace Clutchwright.Genetics.Loci;

/// <summary>Sorts loci into linkage groups and works out the recombination fractions between neighbours.</summary>
internal static class LinkageMap
{
    public static IReadOnlyList<LinkageGroup> GroupsOf(IReadOnlyList<Locus> loci, SexSystem system)
    {
        var groups = new List<LinkageGroup>();
        var done = new HashSet<string>(StringComparer.Ordinal);
        foreach (var locus in loci)
        {
            switch (locus.Placement)
            {
                case Placement.Autosomal:
                    groups.Add(new LinkageGroup(groups.Count, locus.Id, isSex: false, [locus], [], [], -1, system));
                    break;
                case Placement.Linked linked when done.Add(linked.Group):
                    groups.Add(Linked(groups.Count, linked.Group, loci, system));
                    break;
            }
        }

        groups.Add(Sex(groups.Count, loci, system));
        return groups;
    }

    private static LinkageGroup Linked(int index, string id, IReadOnlyList<Locus> loci, SexSystem system)
    {
        var members = loci
            .Select(l => (Locus: l, Linked: l.Placement as Placement.Linked))
            .Where(m => m.Linked is { } linked && string.Equals(linked.Group, id, StringComparison.Ordinal))
            .OrderBy(m => m.Linked!.Position)
            .ToArray();
        var intervals = members
            .Zip(members.Skip(1), (a, b) => RecombinationFraction.AtDistance(b.Linked!.Position - a.Linked!.Position))
            .ToArray();
        return new LinkageGroup(index, id, isSex: false, members.Select(m => m.Locus).ToArray(), intervals, intervals, -1, system);
    }

    private static LinkageGroup Sex(int index, IReadOnlyList<Locus> loci, SexSystem system)
    {
        var members = loci
            .Where(l => l.Placement is Placement.SexLinked)
            .Select(l => (Locus: l, Placement: (Placement.SexLinked)l.Placement))
            .ToArray();

        // Arm 2 runs from its end towards the sex-determining region, arm 1 away from it. Where one sex cannot tell which of two loci
        // lies farther out, the other sex may.
        var outward = members
            .OrderBy(m => m.Placement.Recombination.Value)
            .ThenBy(m => (m.Placement.OtherSex ?? m.Placement.Recombination).Value)
            .ToArray();
        var before = outward.Where(m => m.Placement.Arm == 2).Reverse().ToArray();
        var after = outward.Where(m => m.Placement.Arm != 2).ToArray();
        return new LinkageGroup(
            index,
            "sex",
            isSex: true,
            [.. before.Select(m => m.Locus), .. after.Select(m => m.Locus)],
            Intervals(before, after, p => p.Recombination),
            Intervals(before, after, p => p.OtherSex ?? p.Recombination),
            before.Length,
            system);
    }

    private static RecombinationFraction[] Intervals(
        (Locus Locus, Placement.SexLinked Placement)[] before,
        (Locus Locus, Placement.SexLinked Placement)[] after,
        Func<Placement.SexLinked, RecombinationFraction> fraction) =>
        [.. Away(before.Reverse(), fraction).Reverse(), .. Away(after, fraction)];

    // In the other sex the stated fractions need not follow the map order: a smaller one farther out counts as no distance.
    private static IEnumerable<RecombinationFraction> Away(
        IEnumerable<(Locus Locus, Placement.SexLinked Placement)> arm,
        Func<Placement.SexLinked, RecombinationFraction> fraction)
    {
        var nearer = RecombinationFraction.Complete;
        foreach (var (_, placement) in arm)
        {
            var farther = fraction(placement);
            yield return farther.Value < nearer.Value
                ? RecombinationFraction.Complete
                : RecombinationFraction.Between(nearer, farther);
            nearer = farther;
        }
    }
}
