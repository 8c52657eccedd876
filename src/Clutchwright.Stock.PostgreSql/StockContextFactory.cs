using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Clutchwright.Stock.PostgreSql;

/// <summary>Makes the context for <c>dotnet ef</c>; no server is asked for a migration to be written.</summary>
internal sealed class StockContextFactory : IDesignTimeDbContextFactory<StockContext>
{
    public StockContext CreateDbContext(string[] args) => new(
        new DbContextOptionsBuilder<StockContext>()
            .UseNpgsql("Host=design-time;Database=design-time", postgres => postgres.MigrationsAssembly(typeof(StockContextFactory).Assembly.GetName().Name))
            .Options);
}
