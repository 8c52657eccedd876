using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Tests.Testing;
using Xunit;

namespace Clutchwright.Stock.Tests.Animals;

public sealed class AnimalRuleTests
{
    [Fact]
    public async Task AddAnimal_EverythingGiven_IsFoundAgain()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male, hatched: "2019");
        var dam = await book.AddAsync("D", Sex.Female, hatched: "about 3 March 2018");

        var added = (await book.TryAddAsync(new AnimalEntry
        {
            Tag = " H1 ",
            Name = "Hazel",
            Sex = Sex.Female,
            Hatched = DateRange.Read("2022").Expect(),
            SireId = sire.AnimalId,
            DamId = dam.AnimalId,
            Status = AnimalStatus.HeldBack,
            MassGrams = 812.5,
            Notes = "shy\neats rats",
        })).Expect();

        var found = await book.FindAsync("h1");
        Assert.Equal(added.AnimalId, found.Animal.AnimalId);
        Assert.Equal(("H1", "Hazel", Sex.Female, "2022", AnimalStatus.HeldBack, 812.5, "shy\neats rats"), (
            found.Animal.Tag, found.Animal.Name, found.Animal.Sex, found.Animal.Hatched?.Words, found.Animal.Status, found.Animal.MassGrams, found.Animal.Notes));
        Assert.Equal(("S", "D"), (found.Sire?.Tag, found.Dam?.Tag));
        Assert.Equal(["H1"], (await book.FindAsync(sire)).Offspring.Select(o => o.Tag));
        Assert.Equal(["H1"], (await book.FindAsync(dam)).Offspring.Select(o => o.Tag));
    }

    [Fact]
    public async Task AddAnimal_SeveralPossibleSires_AreKept()
    {
        using var book = await TestBook.NewAsync();
        var one = await book.AddAsync("M1", Sex.Male);
        var two = await book.AddAsync("M2");

        await book.AddAsync("H", possibleSires: [one, two]);

        var found = await book.FindAsync("H");
        Assert.Null(found.Sire);
        Assert.Equal(["M1", "M2"], found.PossibleSires.Select(p => p.Tag));
        Assert.Equal(["H"], (await book.FindAsync(one)).PossibleOffspring.Select(p => p.Tag));
        Assert.Equal(["M1", "M2"], (await book.ListAsync()).Animals.Single(a => a.Tag == "H").PossibleSireTags);
    }

    [Fact]
    public async Task AddAnimal_TagInOtherCase_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        await book.AddAsync("Étoile");

        var outcome = await book.TryAddAsync(TestBook.Entry("étoile"));

        Assert.Equal(new AnimalProblem.TagTaken("étoile"), Refusals.Only<AnimalProblem.TagTaken>(outcome.Problem, AnimalField.Tag));
        Assert.Single(await book.AllAsync());
    }

    [Fact]
    public async Task AddAnimal_FemaleSire_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var female = await book.AddAsync("F", Sex.Female);

        var outcome = await book.TryAddAsync(TestBook.Entry("H", sire: female));

        Assert.Equal(new AnimalProblem.ParentOfWrongSex("F", Sex.Female), Refusals.Only<AnimalProblem.ParentOfWrongSex>(outcome.Problem, AnimalField.Sire));
    }

    [Fact]
    public async Task AddAnimal_MaleDam_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var male = await book.AddAsync("M", Sex.Male);

        var outcome = await book.TryAddAsync(TestBook.Entry("H", dam: male));

        Refusals.Only<AnimalProblem.ParentOfWrongSex>(outcome.Problem, AnimalField.Dam);
    }

    [Fact]
    public async Task AddAnimal_UnsexedSireOfOneAsDamOfAnother_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var unsexed = await book.AddAsync("U");
        await book.AddAsync("H1", sire: unsexed);

        var outcome = await book.TryAddAsync(TestBook.Entry("H2", dam: unsexed));

        Assert.Equal(new AnimalProblem.BothSireAndDam("U"), Refusals.Only<AnimalProblem.BothSireAndDam>(outcome.Problem, AnimalField.Dam));
    }

    [Theory]
    [InlineData("2023", "2022", false)]
    [InlineData("2022-06-01", "2022-06-01", false)]
    [InlineData("2022", "2022", true)]
    [InlineData("about 2023", "2022", true)]
    [InlineData("2021", "2022", true)]
    public async Task AddAnimal_ParentHatchedAfterOffspring_IsRefusedIfCertain(string sireHatched, string hatched, bool allowed)
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male, hatched: sireHatched);

        var outcome = await book.TryAddAsync(TestBook.Entry("H", sire: sire, hatched: hatched));

        Assert.Equal(allowed, outcome.IsDone);
        if (!allowed)
        {
            Refusals.Only<AnimalProblem.ParentNotOlder>(outcome.Problem, AnimalField.Sire);
        }
    }

    [Fact]
    public async Task AddAnimal_UnknownParent_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var stranger = AnimalId.New();

        var outcome = await book.TryAddAsync(new AnimalEntry { Tag = "H", SireId = stranger });

        Assert.Equal(new AnimalProblem.ParentNotFound(stranger), Refusals.Only<AnimalProblem.ParentNotFound>(outcome.Problem, AnimalField.Sire));
    }

    [Fact]
    public async Task AddAnimal_ManyFaults_AreAllNamed()
    {
        using var book = await TestBook.NewAsync();

        var outcome = await book.TryAddAsync(
            new AnimalEntry { Tag = "a|b", MassGrams = -1, Name = "x\ny", Notes = "\0", PossibleSires = [AnimalId.New()] },
            new Stock.Statements.StatementEntry { Kind = Stock.Statements.StatementKind.Told, Text = "?" });

        var fields = Assert.IsType<AnimalProblem.Refused>(outcome.Problem).Problems.Select(p => p.Field);
        AnimalField?[] expected = [AnimalField.Tag, AnimalField.Name, AnimalField.Notes, AnimalField.MassGrams, AnimalField.Sire, AnimalField.Told];
        Assert.Equal(expected, fields);
        Assert.Empty(await book.DeedsAsync());
    }

    [Fact]
    public async Task EditAnimal_OffspringAsSire_IsRefusedAndNamesTheLoop()
    {
        using var book = await TestBook.NewAsync();
        var old = await book.AddAsync("Old", Sex.Male);
        var middle = await book.AddAsync("Middle", Sex.Male, sire: old);
        var young = await book.AddAsync("Young", Sex.Male, sire: middle);

        var outcome = await book.TryEditAsync(old, TestBook.Entry("Old", Sex.Male, sire: young));

        Assert.Equal(["Old", "Young", "Middle"], Refusals.Only<AnimalProblem.OwnAncestor>(outcome.Problem, AnimalField.Sire).Loop);
    }

    [Fact]
    public async Task EditAnimal_OffspringAsPossibleSire_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var dam = await book.AddAsync("Dam", Sex.Female);
        var son = await book.AddAsync("Son", Sex.Male, dam: dam);
        var other = await book.AddAsync("Other", Sex.Male);

        var outcome = await book.TryEditAsync(dam, TestBook.Entry("Dam", Sex.Female, possibleSires: [other, son]));

        Assert.Equal(["Dam", "Son"], Refusals.Only<AnimalProblem.OwnAncestor>(outcome.Problem, AnimalField.Sire).Loop);
    }

    [Fact]
    public async Task EditAnimal_ItselfAsDam_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Female);

        var outcome = await book.TryEditAsync(animal, TestBook.Entry("A", Sex.Female, dam: animal));

        Assert.Equal(["A"], Refusals.Only<AnimalProblem.OwnAncestor>(outcome.Problem, AnimalField.Dam).Loop);
    }

    [Fact]
    public async Task EditAnimal_SexOfASireToFemale_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S");
        await book.AddAsync("H", sire: sire);

        var outcome = await book.TryEditAsync(sire, TestBook.Entry("S", Sex.Female));

        Assert.Equal(
            new AnimalProblem.SexContradictsOffspring(Sex.Female, "H"),
            Refusals.Only<AnimalProblem.SexContradictsOffspring>(outcome.Problem, AnimalField.Sex));
    }

    [Fact]
    public async Task EditAnimal_HatchDateAfterItsOffspring_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", hatched: "2019");
        await book.AddAsync("H", sire: sire, hatched: "2022");

        var outcome = await book.TryEditAsync(sire, TestBook.Entry("S", hatched: "2023"));

        Refusals.Only<AnimalProblem.ParentNotOlder>(outcome.Problem, AnimalField.Hatched);
    }

    [Fact]
    public async Task BinAnimal_WithOffspring_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male);
        var other = await book.AddAsync("O", Sex.Male);
        await book.AddAsync("H1", sire: sire);
        await book.AddAsync("H2", possibleSires: [sire, other]);

        var problem = Assert.IsType<AnimalProblem.HasOffspring>((await book.TryBinAsync(sire)).Problem);

        Assert.Equal(["H1", "H2"], problem.Offspring);
    }

    [Fact]
    public async Task BinAnimal_ThenRestore_IsBackAsItWas()
    {
        using var book = await TestBook.NewAsync();
        var animal = await book.AddAsync("A", Sex.Male);
        await book.SayAsync(animal, Stock.Statements.StatementKind.Seen, "Pastel");
        var before = await book.StateAsync();

        Assert.True((await book.TryBinAsync(animal)).IsDone);
        Assert.Empty((await book.ListAsync()).Animals);
        Assert.Equal(["A"], (await book.ListAsync(new AnimalFilter { InBin = true })).Animals.Select(a => a.Tag));
        Assert.IsType<AnimalProblem.NoSuchTag>((await new FindAnimal(book.Book).RunAsync("A", TestBook.Cancellation)).Problem);
        Assert.Equal(new AnimalProblem.AlreadyBinned("A"), (await book.TryBinAsync(animal)).Problem);
        Assert.True((await book.TryRestoreAsync(animal)).IsDone);

        Assert.Equal(before, await book.StateAsync());
        Assert.Equal(new AnimalProblem.NotBinned("A"), (await book.TryRestoreAsync(animal)).Problem);
    }

    [Fact]
    public async Task RestoreAnimal_TagGivenToAnother_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var first = await book.AddAsync("A");
        await book.TryBinAsync(first);
        await book.AddAsync("a");

        Refusals.Only<AnimalProblem.TagTaken>((await book.TryRestoreAsync(first)).Problem, AnimalField.Tag);
    }

    [Fact]
    public async Task RestoreAnimal_SireInBin_IsRefused()
    {
        using var book = await TestBook.NewAsync();
        var sire = await book.AddAsync("S", Sex.Male);
        var son = await book.AddAsync("Son", sire: sire);
        await book.TryBinAsync(son);
        Assert.True((await book.TryBinAsync(sire)).IsDone);

        Refusals.Only<AnimalProblem.ParentNotFound>((await book.TryRestoreAsync(son)).Problem, AnimalField.Sire);
    }
}
