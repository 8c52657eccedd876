using System.Diagnostics;

namespace Clutchwright.Cli.Tests.Serving;

/// <summary>A PostgreSQL server of one test's own, which can be killed. It has no port, only a socket in its folder.</summary>
internal sealed class PostgreSqlCluster : IDisposable
{
    private const string Shared = "/dev/shm";
    private readonly string _folder;
    private readonly string _bin;

    private PostgreSqlCluster(string folder, string bin)
    {
        _folder = folder;
        _bin = bin;
    }

    private string Database => Path.Combine(_folder, "data");

    /// <summary>The connection string of a database; the socket's folder is the host.</summary>
    public string For(string database, string user = "postgres") => $"Host={_folder};Username={user};Database={database};Timeout=30";

    /// <summary>Makes and starts one; <c>null</c> where there is no PostgreSQL, or nobody but root to run it.</summary>
    public static PostgreSqlCluster? TryStart()
    {
        var bin = Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").Select(v => Path.Combine(v, "bin")).LastOrDefault(b => File.Exists(Path.Combine(b, "initdb")))
            : null;
        if (bin is null)
        {
            return null;
        }

        var folder = Directory.Exists(Shared)
            ? Directory.CreateDirectory(Path.Combine(Shared, $"clutchwright-kill-{Guid.CreateVersion7():N}"[..30])).FullName
            : Directory.CreateTempSubdirectory("clutchwright-kill-").FullName;
        var cluster = new PostgreSqlCluster(folder, bin);
        if (Environment.UserName == "root")
        {
            cluster.Run("chown", "postgres", folder);
        }

        cluster.AsPostgres("initdb", "-D", cluster.Database, "-U", "postgres", "-A", "trust", "-E", "UTF8", "--locale=C");
        cluster.Restart();
        cluster.AsPostgres("createdb", "-h", folder, "-U", "postgres", "book");
        return cluster;
    }

    /// <summary>Makes a user who has to give a password, and owns what is in the database.</summary>
    public void AskForPasswords(string user, string password)
    {
        AsPostgres("psql", "-h", _folder, "-U", "postgres", "-c", $"CREATE ROLE {user} LOGIN PASSWORD '{password}'", "-c", $"ALTER DATABASE book OWNER TO {user}");
        var rules = Path.Combine(Database, "pg_hba.conf");
        File.WriteAllText(rules, $"local all {user} scram-sha-256\n{File.ReadAllText(rules)}");
        AsPostgres("pg_ctl", "-D", Database, "reload");
    }

    /// <summary>Kills every process of the server at once, as if the machine stopped.</summary>
    public void Kill()
    {
        var first = File.ReadAllLines(Path.Combine(Database, "postmaster.pid"))[0];
        Run("sh", "-c", $"kill -9 {first} $(ps -o pid= --ppid {first}) 2> /dev/null; while kill -0 {first} 2> /dev/null; do sleep 0.05; done");
    }

    /// <summary>Starts it, also after it was killed.</summary>
    public void Restart() => AsPostgres(
        "pg_ctl", "-D", Database, "-l", Path.Combine(Database, "server.log"), "-w", "-t", "60", "-o", $"-k {_folder} -c listen_addresses='' -c max_connections=100", "start");

    public void Dispose()
    {
        AsPostgres("pg_ctl", "-D", Database, "-m", "immediate", "-w", "stop");
        Directory.Delete(_folder, recursive: true);
    }

    private void AsPostgres(string program, params string[] args)
    {
        var path = Path.Combine(_bin, program);
        if (Environment.UserName == "root")
        {
            Run("runuser", ["-u", "postgres", "--", path, .. args]);
        }
        else
        {
            Run(path, args);
        }
    }

    // What is started keeps the output open for as long as it runs, so that it cannot be waited for; it goes to the folder.
    private void Run(string program, params string[] args)
    {
        using var process = Process.Start(new ProcessStartInfo("sh")
        {
            ArgumentList = { "-c", "cd \"$0\" && exec \"$@\" > \"$0/out.log\" 2>&1", _folder },
            UseShellExecute = false,
        }.With(program, args))!;
        process.WaitForExit();
        if (process.ExitCode != 0 && program != "sh")
        {
            throw new InvalidOperationException($"{program} {string.Join(' ', args)}: {File.ReadAllText(Path.Combine(_folder, "out.log"))}");
        }
    }
}

/// <summary>Adds arguments.</summary>
internal static class Starting
{
    public static ProcessStartInfo With(this ProcessStartInfo start, string program, IEnumerable<string> args)
    {
        foreach (var arg in args.Prepend(program))
        {
            start.ArgumentList.Add(arg);
        }

        return start;
    }
}
