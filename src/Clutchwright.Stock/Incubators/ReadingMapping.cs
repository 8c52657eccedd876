using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Incubators;

internal sealed class ReadingMapping : IEntityTypeConfiguration<Reading>
{
    public void Configure(EntityTypeBuilder<Reading> builder)
    {
        builder.HasKey(r => r.ReadingId);
        builder.Property(r => r.ReadingId).ValueGeneratedNever();
        builder.Property(r => r.Text).HasMaxLength(Reading.MaxTextLength);
        builder.Property(r => r.Version).IsConcurrencyToken();
        builder.HasIndex(r => new { r.IncubatorId, r.TakenAt });
        builder.HasOne<Incubator>().WithMany().HasForeignKey(r => r.IncubatorId).OnDelete(DeleteBehavior.Restrict);
        builder.ToTable("Readings", table =>
        {
            table.HasCheckConstraint("CK_Readings_Something", "\"Celsius\" IS NOT NULL OR \"HumidityPercent\" IS NOT NULL");
            table.HasCheckConstraint("CK_Readings_Humidity", "\"HumidityPercent\" BETWEEN 0 AND 100");
        });
    }
}
