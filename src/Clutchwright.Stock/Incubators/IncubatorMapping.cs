using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Incubators;

internal sealed class IncubatorMapping : IEntityTypeConfiguration<Incubator>
{
    public void Configure(EntityTypeBuilder<Incubator> builder)
    {
        builder.HasKey(i => i.IncubatorId);
        builder.Property(i => i.IncubatorId).ValueGeneratedNever();
        builder.Property(i => i.Name).HasMaxLength(Incubator.MaxNameLength);
        builder.Property(i => i.Notes).HasMaxLength(Incubator.MaxNotesLength);
        builder.Property(i => i.Version).IsConcurrencyToken();
        builder.ToTable("Incubators", table =>
        {
            table.HasCheckConstraint("CK_Incubators_Name", $"length(\"Name\") BETWEEN 1 AND {Incubator.MaxNameLength}");
            table.HasCheckConstraint("CK_Incubators_Celsius", "\"LowestCelsius\" <= \"HighestCelsius\"");
            table.HasCheckConstraint("CK_Incubators_Humidity", "\"LowestHumidityPercent\" <= \"HighestHumidityPercent\"");
            table.HasCheckConstraint("CK_Incubators_Percent", "\"LowestHumidityPercent\" >= 0 AND \"HighestHumidityPercent\" <= 100");
        });
    }
}
