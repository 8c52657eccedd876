using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.History;

internal sealed class DeedMapping : IEntityTypeConfiguration<Deed>
{
    public void Configure(EntityTypeBuilder<Deed> builder)
    {
        builder.HasKey(d => d.DeedId);
        builder.Property(d => d.DeedId).ValueGeneratedNever();
        builder.Property(d => d.Who).HasMaxLength(Deed.MaxWhoLength);
        builder.Property(d => d.Words).HasMaxLength(Deed.MaxWordsLength);
        builder.HasOne<Deed>().WithMany().HasForeignKey(d => d.Undoes).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(d => d.Changes).WithOne().HasForeignKey(c => c.DeedId).OnDelete(DeleteBehavior.Restrict);
        builder.ToTable("Deeds");
    }
}
