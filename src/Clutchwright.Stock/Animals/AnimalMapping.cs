using Clutchwright.Genetics.Loci;
using Clutchwright.Stock.Clutches;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Animals;

internal sealed class AnimalMapping : IEntityTypeConfiguration<Animal>
{
    public void Configure(EntityTypeBuilder<Animal> builder)
    {
        builder.HasKey(a => a.AnimalId);
        builder.Property(a => a.AnimalId).ValueGeneratedNever();
        builder.Property(a => a.Tag).HasMaxLength(Tags.MaxLength);
        builder.Property(a => a.Name).HasMaxLength(Animal.MaxNameLength);
        builder.Property(a => a.Notes).HasMaxLength(Animal.MaxNotesLength);
        builder.Property(a => a.Version).IsConcurrencyToken();
        builder.Property(a => a.TagKey);
        builder.Property(a => a.TagOrder);
        builder.Property(a => a.SearchText);
        builder.Ignore(a => a.PossibleSireIds);
        builder.ComplexProperty(a => a.Hatched, hatched =>
        {
            hatched.Property(d => d.Words).HasMaxLength(DateRange.MaxWordsLength);
            hatched.Ignore(d => d.IsExact);
        });

        // A tag in the bin is free again.
        builder.HasIndex(a => a.TagKey).IsUnique().HasFilter("\"BinnedAt\" IS NULL");
        builder.HasIndex(a => a.TagOrder);
        builder.HasIndex(a => a.SireId);
        builder.HasIndex(a => a.DamId);

        builder.HasOne(a => a.Sire).WithMany().HasForeignKey(a => a.SireId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne(a => a.Dam).WithMany().HasForeignKey(a => a.DamId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<Clutch>().WithMany().HasForeignKey(a => a.ClutchId).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(a => a.PossibleSires).WithOne().HasForeignKey(p => p.OffspringId).OnDelete(DeleteBehavior.Cascade);

        // The history keeps the possible sires with their animal, so they are always loaded with it.
        builder.Navigation(a => a.PossibleSires).HasField("_possibleSires").AutoInclude();
        builder.HasMany(a => a.Statements).WithOne().HasForeignKey(s => s.AnimalId).OnDelete(DeleteBehavior.Restrict);

        builder.ToTable("Animals", table =>
        {
            table.HasCheckConstraint("CK_Animals_Tag", $"length(\"Tag\") BETWEEN 1 AND {Tags.MaxLength}");
            table.HasCheckConstraint("CK_Animals_Sex", Checks.OneOf<Sex>("Sex"));
            table.HasCheckConstraint("CK_Animals_Status", Checks.OneOf<AnimalStatus>("Status"));
            table.HasCheckConstraint("CK_Animals_MassGrams", "\"MassGrams\" > 0");
            table.HasCheckConstraint("CK_Animals_Hatched", Checks.Range("Hatched"));
            table.HasCheckConstraint("CK_Animals_Parents", "\"SireId\" <> \"AnimalId\" AND \"DamId\" <> \"AnimalId\" AND \"SireId\" <> \"DamId\"");
        });
    }
}
