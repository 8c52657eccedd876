using System.Text.Json.Nodes;
using Clutchwright.Cli.Words;
using Clutchwright.Desk.Kin;
using Clutchwright.Genetics.Loci;
using Clutchwright.Genetics.Numbers;

namespace Clutchwright.Cli.Kin;

/// <summary>The JSON of <c>kin</c>.</summary>
internal static class KinJson
{
    public static JsonObject Of(KinAnswer answer, bool withRoutes, int most)
    {
        var json = new JsonObject
        {
            ["inbreeding"] = ById(answer.Animals, line => JsonValue.Create(line.Inbreeding)),
        };
        if (answer.Animals.All(line => line.Exact is not null))
        {
            json["inbreedingExact"] = ById(answer.Animals, line => JsonValue.Create(line.Exact!.Value.ToString()));
        }

        if (answer.Pair is { } pair)
        {
            AddPair(json, pair, withRoutes);
        }

        if (answer.Relatives is { } relatives)
        {
            json["animal"] = relatives.Animal.Animal.Tag;
            json["relatives"] = JsonShapes.Array(relatives.Relatives.Take(most), r => Animal(r.Animal).With("kinship", r.Kinship).With("relation", r.Relation));
            json["moreRelatives"] = Math.Max(0, relatives.Relatives.Count - most);
            if (answer.Pair is null && relatives.Descent is { } descent)
            {
                AddDescent(json, descent, withRoutes);
            }
        }

        if (answer.Founders is { } founders)
        {
            json["founders"] = Shares(founders.Founders, most);
            json["ancestors"] = Shares(founders.Ancestors, most);
            json["unknownShare"] = founders.UnknownShare;
            json["effectiveFounders"] = founders.EffectiveFounders;
            json["effectiveAncestors"] = founders.EffectiveAncestors;
            json["meanKinship"] = founders.MeanKinship;
            json["group"] = founders.GroupCount;
        }

        if (answer.SexLinked is { } linked)
        {
            json["sexLinked"] = SexLinked(answer, linked);
        }

        json["notes"] = JsonShapes.Array(answer.Notes);
        return json;
    }

    private static JsonObject SexLinked(KinAnswer answer, SexLinkedKin linked)
    {
        var inbreeding = new JsonObject();
        for (var i = 0; i < answer.Animals.Count; i++)
        {
            inbreeding[answer.Animals[i].Animal.Tag] = linked.Inbreeding[i];
        }

        var json = new JsonObject { ["recombination"] = linked.Recombination, ["inbreeding"] = inbreeding };
        if (linked.Kinship is { } kinship)
        {
            json["kinship"] = kinship;
            json["sharedKinship"] = linked.SharedKinship;
        }

        return json;
    }

    private static void AddPair(JsonObject json, KinPair pair, bool withRoutes)
    {
        json["pair"] = new JsonArray(pair.First.Tag, pair.Second.Tag);
        json["kinship"] = pair.Kinship;
        AddExact(json, "kinshipExact", pair.Exact);
        json["relation"] = pair.Relation;
        json["canBePaired"] = pair.CanBePaired;
        AddDescent(json, pair.Descent, withRoutes);
    }

    private static void AddDescent(JsonObject json, KinDescent descent, bool withRoutes)
    {
        json["commonAncestors"] = JsonShapes.Array(descent.CommonAncestors, a => Animal(a.Animal)
            .With("contribution", a.Contribution)
            .With("routes", JsonValue.Create(a.Routes)));
        json["complete"] = descent.IsComplete;
        if (withRoutes)
        {
            json["routes"] = JsonShapes.Array(descent.Routes, Route);
            json["moreRoutes"] = descent.MoreRoutes;
            json["moreContribution"] = descent.MoreContribution;
        }
    }

    private static JsonObject Route(KinRoute route)
    {
        var json = new JsonObject
        {
            ["path"] = JsonShapes.Array(route.Path),
            ["ancestor"] = route.Ancestor,
            ["ancestorInbreeding"] = route.AncestorInbreeding,
            ["chance"] = route.Chance,
            ["contribution"] = route.Contribution,
        };
        return route.FoundersKinship is { } founders ? json.With("foundersKinship", founders) : json;
    }

    private static JsonObject ById(IReadOnlyList<KinLine> lines, Func<KinLine, JsonNode?> value)
    {
        var json = new JsonObject();
        foreach (var line in lines)
        {
            json[line.Animal.Tag] = value(line);
        }

        return json;
    }

    private static void AddExact(JsonObject json, string key, Fraction? exact)
    {
        if (exact is { } fraction)
        {
            json[key] = fraction.ToString();
        }
    }

    private static JsonArray Shares(IReadOnlyList<KinShare> shares, int most) =>
        JsonShapes.Array(shares.Take(most), s => Animal(s.Animal).With("share", s.Share));

    private static JsonObject Animal(KinAnimal animal) => new()
    {
        ["id"] = animal.Tag,
        ["name"] = animal.Name,
        ["sex"] = animal.Sex switch { Sex.Male => "male", Sex.Female => "female", null => null },
    };
}
