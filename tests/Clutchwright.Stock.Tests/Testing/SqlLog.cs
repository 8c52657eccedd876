using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>Writes down every query that EF Core sends.</summary>
internal sealed class SqlLog : DbCommandInterceptor
{
    public List<string> Commands { get; } = [];

    public override ValueTask<InterceptionResult<DbDataReader>> ReaderExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<DbDataReader> result, CancellationToken cancellationToken = default)
    {
        Commands.Add(command.CommandText);
        return new(result);
    }

    public override ValueTask<InterceptionResult<object>> ScalarExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<object> result, CancellationToken cancellationToken = default)
    {
        Commands.Add(command.CommandText);
        return new(result);
    }
}
