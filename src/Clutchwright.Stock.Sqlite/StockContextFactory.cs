using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Design;

namespace Clutchwright.Stock.Sqlite;

/// <summary>Makes the context for <c>dotnet ef</c>; no file is opened for a migration to be written.</summary>
internal sealed class StockContextFactory : IDesignTimeDbContextFactory<StockContext>
{
    public StockContext CreateDbContext(string[] args) => new(
        new DbContextOptionsBuilder<StockContext>()
            .UseSqlite("Data Source=design-time.db", sqlite => sqlite.MigrationsAssembly(typeof(StockContextFactory).Assembly.GetName().Name))
            .Options);
}
