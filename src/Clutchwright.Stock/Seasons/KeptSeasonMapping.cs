using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Seasons;

internal sealed class KeptSeasonMapping : IEntityTypeConfiguration<KeptSeason>
{
    public void Configure(EntityTypeBuilder<KeptSeason> builder)
    {
        builder.HasKey(s => s.KeptSeasonId);
        builder.Property(s => s.KeptSeasonId).ValueGeneratedNever();
        builder.HasIndex(s => s.Year).IsUnique();
        builder.Property(s => s.Goals).HasMaxLength(KeptSeason.MaxGoalsLength);
        builder.Property(s => s.AnimalsJson).HasColumnName("Animals");
        builder.Property(s => s.Version).IsConcurrencyToken();
        builder.Ignore(s => s.Animals);
        builder.ToTable("Seasons", table => table.HasCheckConstraint(
            "CK_Seasons_Year", $"\"Year\" BETWEEN {KeptSeason.FirstYear} AND {KeptSeason.LastYear}"));
    }
}
