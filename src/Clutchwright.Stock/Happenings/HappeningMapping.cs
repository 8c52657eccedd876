using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Happenings;

internal sealed class HappeningMapping : IEntityTypeConfiguration<Happening>
{
    public void Configure(EntityTypeBuilder<Happening> builder)
    {
        builder.HasKey(h => h.HappeningId);
        builder.Property(h => h.HappeningId).ValueGeneratedNever();
        builder.Property(h => h.Text).HasMaxLength(Happening.MaxTextLength);
        builder.Property(h => h.Version).IsConcurrencyToken();
        builder.ComplexProperty(h => h.When, when =>
        {
            when.Property(d => d.Words).HasMaxLength(DateRange.MaxWordsLength);
            when.Ignore(d => d.IsExact);
        });
        builder.Property(h => h.Day);
        builder.HasIndex(h => new { h.Day, h.HappeningId });
        builder.HasIndex(h => new { h.AnimalId, h.Kind, h.Day });
        builder.HasIndex(h => new { h.Kind, h.Day });
        builder.HasOne<Animal>().WithMany().HasForeignKey(h => h.AnimalId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Animal>().WithMany().HasForeignKey(h => h.MateId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Clutch>().WithMany().HasForeignKey(h => h.ClutchId).OnDelete(DeleteBehavior.Restrict);
        builder.ToTable("Happenings", table =>
        {
            table.HasCheckConstraint("CK_Happenings_Kind", Checks.OneOf<HappeningKind>("Kind"));
            table.HasCheckConstraint("CK_Happenings_When", "\"When_Earliest\" <= \"When_Latest\"");
            table.HasCheckConstraint("CK_Happenings_Amount", "\"Amount\" > 0");
            table.HasCheckConstraint("CK_Happenings_Mate", "\"MateId\" <> \"AnimalId\"");
        });
    }
}
