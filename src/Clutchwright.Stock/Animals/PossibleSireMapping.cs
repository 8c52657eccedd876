using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Animals;

internal sealed class PossibleSireMapping : IEntityTypeConfiguration<PossibleSire>
{
    public void Configure(EntityTypeBuilder<PossibleSire> builder)
    {
        builder.HasKey(p => new { p.OffspringId, p.SireId });
        builder.HasOne(p => p.Sire).WithMany().HasForeignKey(p => p.SireId).OnDelete(DeleteBehavior.Restrict);
        builder.ToTable("PossibleSires", table =>
            table.HasCheckConstraint("CK_PossibleSires_Self", "\"SireId\" <> \"OffspringId\""));
    }
}
