namespace Clutchwright.Pedigrees.Kinship;

/// <summary>One route of descent by which the two alleles of a young animal can come from one ancestor: up from one parent, down to the
/// other, through no animal twice.</summary>
/// <param name="Ancestor">The common ancestor's position.</param>
/// <param name="First">Positions from the first parent up to the ancestor, both included.</param>
/// <param name="Second">Positions from the second parent up to <paramref name="Ancestor"/>, both included; or up to another founder, if the keeper says
/// that the two founders are related.</param>
/// <param name="AncestorInbreeding">The ancestor's own inbreeding coefficient F, in [0, 1].</param>
/// <param name="FoundersKinship">For a route through two founders said to be related, their kinship; null otherwise.</param>
/// <param name="Chance">The chance of the sires in doubt through which it goes; 1 without any.</param>
/// <param name="Contribution">What it adds to the young's inbreeding coefficient: <c>(1/2)^n (1 + F)</c> with n animals in the route, times the
/// chance; between related founders <c>(1/2)^(n - 2)</c> times their kinship.</param>
public sealed record DescentRoute(
    int Ancestor,
    IReadOnlyList<int> First,
    IReadOnlyList<int> Second,
    double AncestorInbreeding,
    double? FoundersKinship,
    double Chance,
    double Contribution)
{
    /// <summary>How many animals the route has, both parents and the ancestor included: n of Wright's formula.</summary>
    public int Length => First.Count + Second.Count - (FoundersKinship is null ? 1 : 0);
}

/// <summary>What all routes through one common ancestor add to a young animal's inbreeding.</summary>
/// <param name="Ancestor">The ancestor's position.</param>
/// <param name="Contribution">The sum of the routes' contributions.</param>
/// <param name="Routes">How many routes; <see cref="ulong.MaxValue"/> stands for that many or more.</param>
public sealed record CommonAncestor(int Ancestor, double Contribution, ulong Routes);
