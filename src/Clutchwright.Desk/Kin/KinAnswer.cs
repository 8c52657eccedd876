using Clutchwright.Desk.Words;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Desk.Kin;

/// <summary>What is asked about kinship.</summary>
public sealed record KinQuestion
{
    /// <summary>Gets the pedigree file to answer from; <c>null</c>: the stock.</summary>
    public NamedFile? File { get; init; }

    /// <summary>Gets the tags of two animals: how related they are, and what their young would be.</summary>
    public (string First, string Second)? Pair { get; init; }

    /// <summary>Gets the tag of an animal whose own inbreeding is to be explained and whose relatives are to be listed.</summary>
    public string? Animal { get; init; }

    /// <summary>Gets the most routes of descent to list, from 0.</summary>
    public int MostRoutes { get; init; } = 40;

    /// <summary>Gets a file that says how related founders are, <c>a,b,kinship</c>; <c>null</c>: they are not.</summary>
    public NamedFile? FounderKinship { get; init; }

    /// <summary>Gets a recombination fraction from 0 to 1/2, or a sex-linked gene that has one: kinship at such a locus on the sex chromosomes is asked for
    /// too. <c>null</c>: not asked for.</summary>
    public string? SexLinked { get; init; }

    /// <summary>Gets whether the founders' shares are asked for.</summary>
    public bool WithFounders { get; init; }
}

/// <summary>Who is inbred, and how.</summary>
/// <param name="Animals">Every animal, in the order of the source.</param>
/// <param name="Pair">The pair asked for.</param>
/// <param name="Relatives">The animal asked for, with its relatives.</param>
/// <param name="Founders">The founders' shares, if asked for.</param>
/// <param name="SexLinked">Kinship at a locus on the sex chromosomes, if asked for.</param>
/// <param name="Notes">What was taken for granted, in sentences.</param>
public sealed record KinAnswer(
    IReadOnlyList<KinLine> Animals, KinPair? Pair, RelativesAnswer? Relatives, FoundersAnswer? Founders, SexLinkedKin? SexLinked, IReadOnlyList<string> Notes);

/// <summary>Inbreeding and kinship at a locus on the sex chromosomes.</summary>
/// <param name="Recombination">Between the locus and the place that decides the sex, in [0, 1/2].</param>
/// <param name="Chromosome">The chromosome of which one sex has two: <c>X</c> or <c>Z</c>.</param>
/// <param name="Inbreeding">By animal, in the order of the answer: the chance that its two alleles are identical by descent.</param>
/// <param name="Kinship">With a pair: the chance for an allele drawn from any chromosome of each; else <c>null</c>.</param>
/// <param name="SharedKinship">The same for alleles drawn from <paramref name="Chromosome"/> only; <c>null</c> also where one is not sexed.</param>
public sealed record SexLinkedKin(
    double Recombination, string Chromosome, IReadOnlyList<double> Inbreeding, double? Kinship, double? SharedKinship);

/// <summary>An animal as it stands in answers about kinship.</summary>
/// <param name="Tag">Its tag.</param>
/// <param name="Name">Its name.</param>
/// <param name="Sex">Its sex; <c>null</c>: not sexed.</param>
/// <param name="IsHere">Whether it is in the keeper's room.</param>
public sealed record KinAnimal(string Tag, string? Name, Sex? Sex, bool IsHere);

/// <summary>An animal with its inbreeding coefficient.</summary>
/// <param name="Animal">The animal.</param>
/// <param name="Inbreeding">F, in [0, 1].</param>
/// <param name="Exact">The same as an exact ratio; <c>null</c> where there are too many ancestors for one.</param>
/// <param name="Sires">The sire; several if he is in doubt; none if he is not known.</param>
/// <param name="Dam">The dam.</param>
public sealed record KinLine(KinAnimal Animal, double Inbreeding, Fraction? Exact, IReadOnlyList<string> Sires, string? Dam);

/// <summary>How related two animals are: the inbreeding to be expected of their young, and where it comes from.</summary>
/// <param name="First">One.</param>
/// <param name="Second">The other.</param>
/// <param name="Kinship">Their kinship, in [0, 1]: F of their young.</param>
/// <param name="Exact">The same as an exact ratio, or <c>null</c>.</param>
/// <param name="FirstInbreeding">F of the first.</param>
/// <param name="SecondInbreeding">F of the second.</param>
/// <param name="Relation">What the second is to the first, for example <c>half sibling</c>; <c>null</c>: there is no short word for it.</param>
/// <param name="Descent">Where the kinship comes from.</param>
/// <param name="CanBePaired">Whether the two are, or may be, of different sex.</param>
public sealed record KinPair(
    KinAnimal First,
    KinAnimal Second,
    double Kinship,
    Fraction? Exact,
    double FirstInbreeding,
    double SecondInbreeding,
    string? Relation,
    KinDescent Descent,
    bool CanBePaired);

/// <summary>Every route of descent behind a figure; their contributions sum to it.</summary>
/// <param name="Routes">The routes that add most, the greatest first.</param>
/// <param name="MoreRoutes">How many more there are; <see cref="ulong.MaxValue"/> stands for that many or more.</param>
/// <param name="MoreContribution">What those that are not listed add together.</param>
/// <param name="CommonAncestors">The animals on which routes turn, that which adds most first.</param>
/// <param name="IsComplete">Whether all ancestors were looked at; otherwise the most distant ones stand in <paramref name="MoreContribution"/> alone.</param>
public sealed record KinDescent(
    IReadOnlyList<KinRoute> Routes, ulong MoreRoutes, double MoreContribution, IReadOnlyList<KinAncestor> CommonAncestors, bool IsComplete);

/// <summary>One route of descent.</summary>
/// <param name="Path">The tags from the first parent up to the common ancestor and down to the second.</param>
/// <param name="Ancestor">The common ancestor's tag.</param>
/// <param name="AncestorInbreeding">Its own F.</param>
/// <param name="Chance">The chance of the sires in doubt that it goes through; 1 without.</param>
/// <param name="Contribution">What it adds: (1/2)^n (1 + F) with n animals in the path, times the chance.</param>
/// <param name="FoundersKinship">Where it goes through two founders that are said to be related, <paramref name="Ancestor"/> and the next in the path:
/// their kinship, and then it adds (1/2)^(n - 2) times that; <c>null</c> elsewhere.</param>
public sealed record KinRoute(
    IReadOnlyList<string> Path, string Ancestor, double AncestorInbreeding, double Chance, double Contribution, double? FoundersKinship = null);

/// <summary>A common ancestor.</summary>
/// <param name="Animal">The ancestor.</param>
/// <param name="Contribution">What all routes through it add.</param>
/// <param name="Routes">How many routes turn on it; <see cref="ulong.MaxValue"/> stands for that many or more.</param>
public sealed record KinAncestor(KinAnimal Animal, double Contribution, ulong Routes);

/// <summary>One animal and those related to it.</summary>
/// <param name="Animal">The animal with its F.</param>
/// <param name="Descent">Where its F comes from; <c>null</c> where a parent is not known for sure.</param>
/// <param name="Relatives">The others that share an ancestor with it, the closest first.</param>
public sealed record RelativesAnswer(KinLine Animal, KinDescent? Descent, IReadOnlyList<KinRelative> Relatives);

/// <summary>A relative.</summary>
/// <param name="Animal">The relative.</param>
/// <param name="Kinship">The kinship, in [0, 1].</param>
/// <param name="Relation">What it is to the animal, or <c>null</c>.</param>
public sealed record KinRelative(KinAnimal Animal, double Kinship, string? Relation);

/// <summary>Where the genes of the animals in the room come from.</summary>
/// <param name="GroupCount">How many animals are in the room.</param>
/// <param name="Founders">The founders with their shares, the greatest first.</param>
/// <param name="UnknownShare">The share that comes through unknown parents.</param>
/// <param name="EffectiveFounders">The effective number of founders.</param>
/// <param name="Ancestors">The ancestors that together explain the group, each with what it adds.</param>
/// <param name="EffectiveAncestors">The effective number of ancestors.</param>
/// <param name="MeanKinship">The mean kinship of the group, each animal with itself included; <c>null</c> where the group is too large.</param>
public sealed record FoundersAnswer(
    int GroupCount,
    IReadOnlyList<KinShare> Founders,
    double UnknownShare,
    double EffectiveFounders,
    IReadOnlyList<KinShare> Ancestors,
    double EffectiveAncestors,
    double? MeanKinship);

/// <summary>A share.</summary>
/// <param name="Animal">The founder or ancestor.</param>
/// <param name="Share">In [0, 1].</param>
public sealed record KinShare(KinAnimal Animal, double Share);

/// <summary>How related every male in the room is to every female in it.</summary>
/// <param name="Males">The males, in the order of the stock.</param>
/// <param name="Females">The females.</param>
/// <param name="Kinships">By male, then by female: F of their young.</param>
/// <param name="Unsexed">How many animals in the room are not sexed and stand in neither list.</param>
public sealed record KinTableAnswer(
    IReadOnlyList<KinLine> Males, IReadOnlyList<KinLine> Females, IReadOnlyList<IReadOnlyList<double>> Kinships, int Unsexed);
