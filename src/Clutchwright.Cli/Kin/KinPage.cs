using Clutchwright.Cli.Words;
using Clutchwright.Desk.Kin;
using Clutchwright.Desk.Words;

namespace Clutchwright.Cli.Kin;

/// <summary>The readable answer of <c>kin</c>.</summary>
internal static class KinPage
{
    public static void Send(Terminal terminal, KinAnswer answer, bool withRoutes, int most)
    {
        var page = new Page(terminal);
        if (answer.Pair is { } pair)
        {
            Pair(page, pair, withRoutes);
        }

        if (answer.Relatives is { } relatives)
        {
            Relatives(page, relatives, withRoutes, most);
        }

        if (answer.Founders is { } founders)
        {
            Founders(page, founders, most);
        }

        if (answer.Pair is null && answer.Relatives is null && answer.Founders is null)
        {
            Inbred(page, answer, most);
        }

        if (answer.SexLinked is { } linked)
        {
            SexLinked(page, answer, linked, most);
        }

        if (answer.Notes.Count > 0)
        {
            page.Heading("Notes");
            page.Points(answer.Notes);
        }

        page.Send();
    }

    private static void Inbred(Page page, KinAnswer answer, int most)
    {
        var inbred = answer.Animals.Where(a => a.Inbreeding > 0.0).OrderByDescending(a => a.Inbreeding).ToArray();
        page.Heading("Inbreeding");
        page.Line(Page.Plain(inbred.Length == 0
            ? $"None of {answer.Animals.Count:N0} animals is inbred, as far as the pedigree goes."
            : $"{inbred.Length:N0} of {answer.Animals.Count:N0} animals {(inbred.Length == 1 ? "is" : "are")} inbred; the mean of all is {KinText.Percent(answer.Animals.Average(a => a.Inbreeding))}."));
        page.Table(
            [">F", "animal", "sire", "dam"],
            [.. inbred.Take(most).Select(a => new[]
            {
                Page.Plain(KinText.PercentAndFraction(a.Inbreeding, a.Exact)), Name(a.Animal), Page.Plain(string.Join(" or ", a.Sires)), Page.Plain(a.Dam),
            })]);
        More(page, inbred.Length - most);
    }

    private static void SexLinked(Page page, KinAnswer answer, SexLinkedKin linked, int most)
    {
        page.Heading($"At a locus on the sex chromosomes that recombines with sex by {KinText.Percent(linked.Recombination)}");
        if (answer.Pair is { } pair && linked.Kinship is { } kinship)
        {
            page.Table(["", ""],
            [
                [$"kinship of {Page.Plain(pair.First.Tag)} and {Page.Plain(pair.Second.Tag)}", Page.Plain(KinText.Percent(kinship))],
                [
                    $"the same of the {linked.Chromosome} alone",
                    linked.SharedKinship is { } shared ? Page.Plain(KinText.Percent(shared)) : "not known: one is not sexed",
                ],
            ]);
            return;
        }

        var inbred = answer.Animals.Zip(linked.Inbreeding).Where(a => a.Second > 0.0).OrderByDescending(a => a.Second).ToArray();
        page.Line(Page.Plain(inbred.Length == 0
            ? $"None of {answer.Animals.Count:N0} animals is inbred there, as far as the pedigree goes."
            : $"{inbred.Length:N0} of {answer.Animals.Count:N0} animals {(inbred.Length == 1 ? "is" : "are")} inbred there."));
        page.Table([">F", "animal"], [.. inbred.Take(most).Select(a => new[] { Page.Plain(KinText.Percent(a.Second)), Name(a.First.Animal) })]);
        More(page, inbred.Length - most);
    }

    private static void Pair(Page page, KinPair pair, bool withRoutes)
    {
        page.Heading($"{pair.First.Tag} and {pair.Second.Tag}");
        page.Table(["", ""],
        [
            ["their young would be inbred", Page.Plain(KinText.PercentAndFraction(pair.Kinship, pair.Exact))],
            [$"{Page.Plain(pair.Second.Tag)} is", Page.Plain(pair.Relation is null ? (pair.Kinship > 0.0 ? "a more distant relative" : "not related, as far as the pedigree goes") : $"{pair.First.Tag}'s {pair.Relation}")],
            [$"{Page.Plain(pair.First.Tag)} is inbred itself", Page.Plain(KinText.Percent(pair.FirstInbreeding))],
            [$"{Page.Plain(pair.Second.Tag)} is inbred itself", Page.Plain(KinText.Percent(pair.SecondInbreeding))],
        ]);
        if (!pair.CanBePaired)
        {
            page.Line(Page.Plain("They cannot be paired: they are of one sex."));
        }

        Descent(page, pair.Descent, withRoutes);
    }

    private static void Relatives(Page page, RelativesAnswer answer, bool withRoutes, int most)
    {
        page.Heading($"{answer.Animal.Animal.Tag}: inbreeding {KinText.PercentAndFraction(answer.Animal.Inbreeding, answer.Animal.Exact)}");
        if (answer.Descent is { } descent)
        {
            Descent(page, descent, withRoutes);
        }

        page.Heading("Relatives");
        page.Table(
            [">kinship", "animal", ""],
            [.. answer.Relatives.Take(most).Select(r => new[] { Page.Plain(KinText.Percent(r.Kinship)), Name(r.Animal), Page.Plain(r.Relation) })]);
        if (answer.Relatives.Count == 0)
        {
            page.Line("None on record.");
        }

        More(page, answer.Relatives.Count - most);
    }

    private static void Descent(Page page, KinDescent descent, bool withRoutes)
    {
        if (descent.CommonAncestors.Count > 0)
        {
            page.Heading("Common ancestors");
            page.Table(
                [">adds", "ancestor", ">routes"],
                [.. descent.CommonAncestors.Take(10).Select(a => new[]
                {
                    Page.Plain(KinText.Percent(a.Contribution)), Name(a.Animal), Page.Plain(Count(a.Routes)),
                })]);
            More(page, descent.CommonAncestors.Count - 10);
        }

        if (!withRoutes || descent.Routes.Count == 0)
        {
            return;
        }

        page.Heading("Routes of descent");
        page.Table(
            [">adds", "by way of", ""],
            [.. descent.Routes.Select(r => new[]
            {
                Page.Plain(KinText.Percent(r.Contribution)),
                string.Join(" - ", r.Path.Select(tag => tag == r.Ancestor ? Page.Seen(tag) : Page.Plain(tag))),
                Page.Plain(string.Join(", ", new[]
                {
                    r.FoundersKinship is { } founders ? $"{r.Ancestor} is said to be related to the next by {KinText.Percent(founders)}" : null,
                    r.FoundersKinship is null && r.AncestorInbreeding > 0.0 ? $"{r.Ancestor} is inbred {KinText.Percent(r.AncestorInbreeding)}" : null,
                    r.Chance < 1.0 ? $"if the sire is so, chance {KinText.Percent(r.Chance)}" : null,
                }.OfType<string>())),
            })]);
        if (descent.MoreRoutes > 0)
        {
            page.Line(Page.Plain($"… and {Count(descent.MoreRoutes)} more, which add {KinText.Percent(descent.MoreContribution)} together (--most N lists more)."));
        }

        if (!descent.IsComplete)
        {
            page.Line(Page.Plain("Only the nearest ancestors were searched for routes; the figures count all of them."));
        }
    }

    private static void Founders(Page page, FoundersAnswer answer, int most)
    {
        page.Heading($"Where the genes of your {answer.GroupCount:N0} animals come from");
        var figures = new (string Name, string? Value)[]
        {
            ("founders", $"{answer.Founders.Count:N0}"),
            ("effective founders", $"{answer.EffectiveFounders:0.0}"),
            ("effective ancestors", $"{answer.EffectiveAncestors:0.0}"),
            ("mean kinship", answer.MeanKinship is { } mean ? KinText.Percent(mean) : null),
            ("through unknown parents", answer.UnknownShare > 0.0 ? KinText.Percent(answer.UnknownShare) : null),
        };
        page.Table(["", ">"], [.. figures.Where(f => f.Value is not null).Select(f => new[] { f.Name, Page.Plain(f.Value) })]);
        page.Heading("Founders");
        page.Table([">share", "founder"], [.. answer.Founders.Take(most).Select(Row)]);
        More(page, answer.Founders.Count - most);
        page.Heading("Ancestors that together explain them");
        page.Table([">adds", "ancestor"], [.. answer.Ancestors.Take(most).Select(Row)]);
        More(page, answer.Ancestors.Count - most);

        static string[] Row(KinShare share) => [Page.Plain(KinText.Percent(share.Share)), Name(share.Animal)];
    }

    private static void More(Page page, int more)
    {
        if (more > 0)
        {
            page.Line(Page.Plain($"… and {more:N0} more."));
        }
    }

    private static string Count(ulong count) => count == ulong.MaxValue ? $"over {ulong.MaxValue / 10:N0}" : $"{count:N0}";

    private static string Name(KinAnimal animal) => Page.Plain(animal.Name is { } name ? $"{animal.Tag} {name}" : animal.Tag);
}
