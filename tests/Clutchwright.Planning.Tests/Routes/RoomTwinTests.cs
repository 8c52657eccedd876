using Clutchwright.Planning.Routes;
using Clutchwright.Testing;

namespace Clutchwright.Planning.Tests.Routes;

public class RoomTwinTests
{
    private const int MostSchemes = 4000;

    [Theory]
    [InlineData(1, 4, 150)]
    [InlineData(2, 3, 150)]
    [InlineData(3, 2, 30)]
    public void Of_RoomOfSeveralLoci_IsWhatEverySchemeWrittenOutGives(int loci, int mostRaised, int rooms) =>
        Room.Gen(loci, mostRaised).SampleCounted(rooms, drawn =>
        {
            // As many animals held back as can still be written out.
            var room = drawn;
            var schemes = new RoomTwin(room).Schemes(MostSchemes);
            while (schemes is null)
            {
                room = room with { MostRaised = room.MostRaised - 1 };
                schemes = new RoomTwin(room).Schemes(MostSchemes);
            }

            var answer = RouteAnswer.Of(room.Problem(), cancel: TestContext.Current.CancellationToken);

            Assert.True(answer.IsProven, "not proven");
            var best = schemes.Select(s => s.Chance[^1]).DefaultIfEmpty().Max();
            var listed = schemes.Where(s => s.Chance[^1] >= 0.05 * best && s.Chance[^1] >= 1e-4).ToArray();
            foreach (var route in answer.Routes)
            {
                Assert.True(
                    schemes.Any(s => Math.Abs(s.Pairings - route.Pairings) < 1e-9 && s.Raised == route.Raised && Enumerable.Range(1, room.Seasons).All(t =>
                        Math.Abs(s.Chance[t] - route.ChanceBySeason[t]) < 1e-9)),
                    $"{room}: no scheme is the route {string.Join(' ', route.ChanceBySeason)}, {route.Pairings} pairings, {route.Raised} raised");
            }

            // By each season: a route with as good a chance, as few animals and as low a cost, here a unit a pairing and an animal.
            foreach (var scheme in listed)
            {
                for (var t = 1; t <= room.Seasons; t++)
                {
                    Assert.True(
                        scheme.Chance[t] <= 1e-12 || answer.Routes.Any(r => r.Cost <= scheme.Pairings + scheme.Raised + 1e-6 && r.Raised <= scheme.Raised
                            && r.ChanceBySeason[t] >= scheme.Chance[t] - 1e-9),
                        $"{room}: by season {t} no route is as good as {scheme.Text}, {string.Join(' ', scheme.Chance)}, {scheme.Pairings} pairings, {scheme.Raised} raised");
                }
            }
        });
}
