namespace Clutchwright.Reference.Tests.Programs;

/// <summary>A program that is missing, fails or takes too long is told, and never passed over.</summary>
public sealed class ReferenceProgramTests
{
    [Fact]
    public async Task RunAsync_OfAMissingProgram_NamesItsPackage()
    {
        using var folder = new WorkFolder();

        var problem = await Assert.ThrowsAsync<InvalidOperationException>(
            () => new ReferenceProgram("no-such-program", "no-such-package").RunAsync(folder.FullPath, TimeSpan.FromSeconds(5)));

        Assert.Contains("'no-such-program' is missing", problem.Message, StringComparison.Ordinal);
        Assert.Contains("apt-get install no-such-package", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_OfAProgramThatFails_TellsWhatItSaid()
    {
        using var folder = new WorkFolder();

        var problem = await Assert.ThrowsAsync<InvalidOperationException>(
            () => new ReferenceProgram("ls", "coreutils").RunAsync(folder.FullPath, TimeSpan.FromSeconds(20), "no-such-file"));

        Assert.Contains("no-such-file", problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task RunAsync_OfAProgramThatTakesTooLong_StopsIt()
    {
        using var folder = new WorkFolder();

        await Assert.ThrowsAsync<TimeoutException>(
            () => new ReferenceProgram("sleep", "coreutils").RunAsync(folder.FullPath, TimeSpan.FromMilliseconds(200), "60"));
    }
}
