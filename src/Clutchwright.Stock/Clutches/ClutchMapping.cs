using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Incubators;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Clutches;

internal sealed class ClutchMapping : IEntityTypeConfiguration<Clutch>
{
    public void Configure(EntityTypeBuilder<Clutch> builder)
    {
        builder.HasKey(c => c.ClutchId);
        builder.Property(c => c.ClutchId).ValueGeneratedNever();
        builder.Property(c => c.Tag).HasMaxLength(Tags.MaxLength);
        builder.Property(c => c.TagKey);
        builder.Property(c => c.Notes).HasMaxLength(Clutch.MaxNotesLength);
        builder.Property(c => c.SiresJson).HasColumnName("Sires");
        builder.Property(c => c.CountedJson).HasColumnName("Counted");
        builder.Property(c => c.Version).IsConcurrencyToken();
        builder.Ignore(c => c.Sires);
        builder.Ignore(c => c.Counted);
        builder.ComplexProperty(c => c.Laid, laid =>
        {
            laid.Property(d => d.Words).HasMaxLength(DateRange.MaxWordsLength);
            laid.Ignore(d => d.IsExact);
        });
        builder.ComplexProperty(c => c.Hatched, hatched =>
        {
            hatched.Property(d => d.Words).HasMaxLength(DateRange.MaxWordsLength);
            hatched.Ignore(d => d.IsExact);
        });

        // A tag in the bin is free again.
        builder.HasIndex(c => c.TagKey).IsUnique().HasFilter("\"BinnedAt\" IS NULL");
        builder.HasOne<Animal>().WithMany().HasForeignKey(c => c.DamId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Incubator>().WithMany().HasForeignKey(c => c.IncubatorId).OnDelete(DeleteBehavior.Restrict);
        builder.ToTable("Clutches", table =>
        {
            table.HasCheckConstraint("CK_Clutches_Tag", $"length(\"Tag\") BETWEEN 1 AND {Tags.MaxLength}");
            table.HasCheckConstraint("CK_Clutches_GoodEggs", $"\"GoodEggs\" BETWEEN 0 AND {Clutch.MostEggs}");
            table.HasCheckConstraint("CK_Clutches_Slugs", $"\"Slugs\" BETWEEN 0 AND {Clutch.MostEggs}");
            table.HasCheckConstraint("CK_Clutches_MassGrams", "\"MassGrams\" > 0");
            table.HasCheckConstraint("CK_Clutches_Laid", "\"Laid_Earliest\" <= \"Laid_Latest\"");
            table.HasCheckConstraint("CK_Clutches_Hatched", Checks.Range("Hatched"));
            table.HasCheckConstraint("CK_Clutches_Order", "\"Laid_Earliest\" <= \"Hatched_Latest\"");
        });
    }
}
