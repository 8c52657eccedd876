using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Settings;

internal sealed class SettingMapping : IEntityTypeConfiguration<KeptSetting>
{
    public void Configure(EntityTypeBuilder<KeptSetting> builder)
    {
        builder.HasKey(s => s.SettingId);
        builder.Property(s => s.SettingId).ValueGeneratedNever();
        builder.Property(s => s.Name).HasMaxLength(KeptSetting.MaxNameLength);
        builder.Property(s => s.Value).HasMaxLength(KeptSetting.MaxValueLength);
        builder.Property(s => s.Version).IsConcurrencyToken();
        builder.HasIndex(s => s.Name).IsUnique();
        builder.ToTable("Settings");
    }
}
