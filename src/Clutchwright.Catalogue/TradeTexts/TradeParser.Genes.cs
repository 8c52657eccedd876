using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Catalogue.TradeTexts;

/// <content>What the words before a name make of it.</content>
internal sealed partial class TradeParser
{
    // double het Clown Pied: het holds for the recessives that follow, up to a gene that shows in one copy.
    private TextProblem? HetRun(Qualifier qualifier)
    {
        var count = 0;
        for (var resume = _at; ; resume = _at)
        {
            while (count > 0 && (IsJoiner(_at) || (IsAt(_at, TokenKind.Slash) && NameAt(_at + 1) is not null)))
            {
                _at++;
            }

            if (NameAt(_at) is not { } name)
            {
                if (count == 0)
                {
                    return _at < _tokens.Count && _tokens[_at].Kind == TokenKind.Word
                        ? Unknown()
                        : Problem(TextProblemKind.Incomplete, qualifier.Span, $"'{Words(qualifier.Span)}' names no gene.");
                }

                _at = resume;
                break;
            }

            if (IsPairAt(name))
            {
                if (count == 0)
                {
                    return Problem(TextProblemKind.Contradiction, qualifier.Span.To(name.Span), $"'{Words(qualifier.Span)}' is one copy of a gene; a slash makes a pair.");
                }

                _at = resume;
                break;
            }

            var carried = HetOf(name.Term);
            if (carried is null)
            {
                if (count > 0)
                {
                    _at = resume;
                    break;
                }

                return HetOfVisible(qualifier, name);
            }

            if (qualifier.Copies > 0 && count + carried.Length > qualifier.Copies)
            {
                return Problem(
                    TextProblemKind.Contradiction, qualifier.Span.To(name.Span), $"'{Words(qualifier.Span)}' names {qualifier.Copies} genes; here are more.");
            }

            // The qualifier stands before the first name and holds for the others.
            var span = count == 0 ? qualifier.Span.To(name.Span) : name.Span;
            foreach (var allele in carried)
            {
                if (qualifier.Side is not null && !allele.Locus.Group.IsSex)
                {
                    return NotSexLinked(qualifier, allele.Name);
                }

                _result.Claims.Add(new Claim.Carried(allele, ChanceOf(qualifier, allele.Name), span) { Side = qualifier.Side });
            }

            count += carried.Length;
            _at += name.Length;
        }

        return count < qualifier.Copies
            ? Problem(TextProblemKind.Incomplete, qualifier.Span, $"'{Words(qualifier.Span)}' names {qualifier.Copies} genes; here {(count == 1 ? "is one" : $"are {count}")}.")
            : null;
    }

    private bool IsPairAt(NameMatch name)
    {
        var slash = _at + name.Length;
        return IsAt(slash, TokenKind.Slash)
            && (IsAt(slash + 1, TokenKind.Plus)
                || (name.Term is Term.OfAllele { Value: var left }
                    && NameAt(slash + 1) is { Term: Term.OfAllele { Value: var right } }
                    && left.Locus == right.Locus));
    }

    // The alleles that het of a name means: one recessive, or the recessives a combination is made of.
    private static Allele[]? HetOf(Term term) => term switch
    {
        Term.OfAllele { Value: { Mode: InheritanceMode.Recessive } allele } => [allele],
        Term.OfCombination combination when combination.Claims.All(c => c is Claim.Shown { Allele.Mode: InheritanceMode.Recessive }) =>
            combination.Claims.Select(c => ((Claim.Shown)c).Allele).ToArray(),
        _ => null,
    };

    private TextProblem? HetOfVisible(Qualifier qualifier, NameMatch name)
    {
        if (name.Term is not Term.OfAllele { Value: var allele })
        {
            return Problem(TextProblemKind.NotCarriedUnseen, qualifier.Span.To(name.Span), $"het goes with a gene; '{Words(name.Span)}' is a look.");
        }

        if (allele.Mode == InheritanceMode.Dominant)
        {
            return Problem(
                TextProblemKind.NotCarriedUnseen,
                qualifier.Span.To(name.Span),
                $"{allele.Name} is dominant and shows in one copy: write {allele.Name}, or possible {allele.Name} if that is in doubt.");
        }

        if (qualifier.Copies > 0)
        {
            return Problem(
                TextProblemKind.NotCarriedUnseen, qualifier.Span.To(name.Span), $"{allele.Name} shows in one copy; '{Words(qualifier.Span)}' names recessive genes.");
        }

        // "het Russo" is common for one copy; what a recessive right behind it would be is anyone's guess.
        _at += name.Length;
        if (NameAt(_at) is { Term: Term.OfAllele { Value.Mode: InheritanceMode.Recessive } } next)
        {
            return Problem(
                TextProblemKind.Contradiction,
                qualifier.Span.To(next.Span),
                $"{allele.Name} shows in one copy, so it stays open whether {Words(next.Span)} is het; write '{allele.Name} het {Words(next.Span)}' or '{Words(next.Span)} {allele.Name}'.");
        }

        if (qualifier.Side is not null && !allele.Locus.Group.IsSex)
        {
            return NotSexLinked(qualifier, allele.Name);
        }

        Note(qualifier.Span.To(name.Span), $"{allele.Name} shows in one copy; taken as {(ChanceIsOpen(qualifier) ? "possible " : "")}{allele.Name}.");
        _result.Claims.Add(new Claim.Carried(allele, ChanceOf(qualifier, allele.Name), qualifier.Span.To(name.Span)) { Side = qualifier.Side });
        return null;
    }

    private static bool ChanceIsOpen(Qualifier qualifier) => qualifier.IsPossible || qualifier.Chance is { IsCertain: false };

    private TextProblem? One(Qualifier qualifier)
    {
        if (IsAt(_at, TokenKind.Plus) && IsAt(_at + 1, TokenKind.Slash))
        {
            return SlashPair(qualifier, null);
        }

        if (NameAt(_at) is not { } name)
        {
            return _tokens[_at].Kind == TokenKind.Word
                ? Unknown()
                : Problem(TextProblemKind.Incomplete, qualifier.IsEmpty ? _tokens[_at].Span : qualifier.Span, "A gene should stand here.");
        }

        if (IsAt(_at + name.Length, TokenKind.Slash))
        {
            return SlashPair(qualifier, name);
        }

        _at += name.Length;
        var span = qualifier.IsEmpty ? name.Span : qualifier.Span.To(name.Span);
        var isOpen = qualifier.IsPossible;
        switch (name.Term)
        {
            case Term.OfAllele { Value: var allele }:
                return OneAllele(qualifier, allele, span);

            case Term.OfPair when qualifier.IsTwo:
                return Problem(TextProblemKind.Contradiction, span, $"'{Words(name.Span)}' is a pair of alleles already; super goes with a gene.");

            case Term.OfPair when qualifier.Side is not null:
                return TwoCopyMaker(qualifier, name);

            case Term.OfPair { Locus: var locus, First: var first, Second: var second }:
                _result.Claims.Add(new Claim.Pair(locus, first, second, isOpen ? ChanceOf(qualifier, Words(name.Span)) : Probability.Certain, span));
                return null;

            case Term.OfForm or Term.OfCombination or Term.OfNormal or Term.OfSpecies when isOpen || qualifier.IsTwo || qualifier.Side is not null:
                return Problem(TextProblemKind.Contradiction, span, $"'{Words(qualifier.Span)}' goes with a gene; '{Words(name.Span)}' is a look.");

            case Term.OfForm { Value: var form }:
                _result.Claims.Add(new Claim.Form(form, span));
                return null;

            case Term.OfCombination combination:
                // Keepers do not all mean the same by such a name: Snow is of several lines.
                Note(span, $"{combination.Name} is taken as {combination.Of}.");
                _result.Claims.AddRange(combination.Claims.Select(c => c with { Span = span }));
                return null;

            case Term.OfNormal:
                _result.Claims.Add(new Claim.Normal(span));
                return null;

            default:
                return null;
        }
    }

    private TextProblem? OneAllele(Qualifier qualifier, Allele allele, TextSpan span)
    {
        var isRecessive = allele.Mode == InheritanceMode.Recessive;
        var chance = qualifier.IsPossible ? ChanceOf(qualifier, allele.Name) : Probability.Certain;
        if (qualifier.Side is not null && qualifier.IsTwo)
        {
            return Problem(TextProblemKind.NotAMaker, span, $"Two copies of {allele.Name} go to every young; only one copy makes a maker.");
        }

        if (qualifier.IsTwo || (isRecessive && qualifier.IsVisual))
        {
            if (isRecessive && qualifier.IsSuper)
            {
                Note(span, $"{allele.Name} is recessive; Super {allele.Name} is taken as {allele.Name}, two copies.");
            }

            _result.Claims.Add(new Claim.Pair(allele.Locus, allele.Index, allele.Index, chance, span));
        }
        else if (qualifier.IsPossible)
        {
            if (isRecessive)
            {
                Note(span, $"Taken as possible het {allele.Name}.");
            }

            _result.Claims.Add(new Claim.Carried(allele, chance, span) { Side = qualifier.Side });
        }
        else if (isRecessive && qualifier.Side is not null)
        {
            return Problem(TextProblemKind.NotAMaker, span, $"{allele.Name} is recessive, so that an animal showing it has two copies; only one copy makes a maker: '{Words(qualifier.Span)} het {allele.Name}'.");
        }
        else
        {
            _result.Claims.Add(new Claim.Shown(allele, span) { Side = qualifier.Side });
        }

        return null;
    }

    // Mojave/Lesser, clown/clown, Pastel/+
    private TextProblem? SlashPair(Qualifier qualifier, NameMatch? left)
    {
        var start = _tokens[_at].Span;
        _at += (left?.Length ?? 1) + 1;
        if (AlleleOf(left, out var first) is { } leftProblem)
        {
            return leftProblem;
        }

        NameMatch? right = null;
        if (IsAt(_at, TokenKind.Plus))
        {
            _at++;
        }
        else if (NameAt(_at) is { } name)
        {
            right = name;
            _at += name.Length;
        }
        else
        {
            return _at < _tokens.Count && _tokens[_at].Kind == TokenKind.Word
                ? Unknown()
                : Problem(TextProblemKind.Incomplete, _tokens[_at - 1].Span, "After a slash stands an allele of the same locus, or + for the wild one.");
        }

        if (AlleleOf(right, out var second) is { } rightProblem)
        {
            return rightProblem;
        }

        var span = start.To(_tokens[_at - 1].Span);
        if (first is not null && second is not null && first.Locus != second.Locus)
        {
            return Problem(
                TextProblemKind.NotOneLocus, span, $"{first.Name} and {second.Name} are not alleles of one locus; write them apart: {first.Name} {second.Name}.");
        }

        if (IsAt(_at, TokenKind.Slash))
        {
            var third = NameAt(_at + 1);
            return Problem(TextProblemKind.TooManyAlleles, third?.Span ?? _tokens[_at].Span, "An animal has two alleles at a locus; here is a third.");
        }

        if (qualifier.IsTwo || qualifier.IsVisual)
        {
            return Problem(TextProblemKind.Contradiction, qualifier.Span.To(span), $"'{Words(span)}' is a pair of alleles already; '{Words(qualifier.Span)}' adds nothing.");
        }

        var chance = qualifier.IsPossible ? ChanceOf(qualifier, Words(span)) : Probability.Certain;
        switch (first ?? second)
        {
            case null:
                _result.Claims.Add(new Claim.Normal(span));
                return null;

            case { } one when first is null || second is null:
                if (qualifier.Side is not null && !one.Locus.Group.IsSex)
                {
                    return NotSexLinked(qualifier, one.Name);
                }

                _result.Claims.Add(qualifier.IsPossible
                    ? new Claim.Pair(one.Locus, 0, one.Index, chance, span)
                    : new Claim.Carried(one, chance, span) { Side = qualifier.Side });
                return null;

            case { } one:
                if (qualifier.Side is not null)
                {
                    return Problem(TextProblemKind.NotAMaker, qualifier.Span.To(span), "With two mutant alleles say which rides where by strands, as in (X A/Y B).");
                }

                _result.Claims.Add(new Claim.Pair(one.Locus, Math.Min(first!.Index, second!.Index), Math.Max(first.Index, second.Index), chance, span));
                return null;
        }
    }

    private TextProblem? AlleleOf(NameMatch? name, out Allele? allele)
    {
        allele = (name?.Term as Term.OfAllele)?.Value;
        return name is not null && allele is null
            ? Problem(TextProblemKind.NotOneLocus, name.Span, $"A slash stands between two alleles of one locus; '{Words(name.Span)}' is a look.")
            : null;
    }
}
