using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Routes;

internal sealed class AdoptedRouteMapping : IEntityTypeConfiguration<AdoptedRoute>
{
    public void Configure(EntityTypeBuilder<AdoptedRoute> builder)
    {
        builder.HasKey(r => r.AdoptedRouteId);
        builder.Property(r => r.AdoptedRouteId).ValueGeneratedNever();
        builder.Property(r => r.Want).HasMaxLength(AdoptedRoute.MaxWantLength);
        builder.Property(r => r.Asked).HasMaxLength(AdoptedRoute.MaxDocumentLength);
        builder.Property(r => r.Steps).HasMaxLength(AdoptedRoute.MaxDocumentLength);
        builder.Property(r => r.Version).IsConcurrencyToken();
        builder.ToTable("Routes", table =>
        {
            table.HasCheckConstraint("CK_Routes_Ending", Checks.OneOf<RouteEnding>("Ending"));
            table.HasCheckConstraint("CK_Routes_Years", "\"FirstYear\" <= \"LastYear\"");
        });
    }
}
