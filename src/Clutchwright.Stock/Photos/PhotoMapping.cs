using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Photos;

internal sealed class PhotoMapping : IEntityTypeConfiguration<Photo>
{
    public void Configure(EntityTypeBuilder<Photo> builder)
    {
        builder.HasKey(p => p.PhotoId);
        builder.Property(p => p.PhotoId).ValueGeneratedNever();
        builder.Property(p => p.Digest).HasMaxLength(PhotoContentMapping.DigestLength);
        builder.Property(p => p.Caption).HasMaxLength(Photo.MaxCaptionLength);
        builder.Property(p => p.Version).IsConcurrencyToken();
        builder.ComplexProperty(p => p.Taken, taken =>
        {
            taken.Property(d => d.Words).HasMaxLength(DateRange.MaxWordsLength);
            taken.Ignore(d => d.IsExact);
        });
        builder.HasOne<Animal>().WithMany().HasForeignKey(p => p.AnimalId).OnDelete(DeleteBehavior.Restrict);
        builder.HasOne<PhotoContent>().WithMany().HasForeignKey(p => p.Digest).OnDelete(DeleteBehavior.Restrict);
        builder.ToTable("Photos", table =>
        {
            table.HasCheckConstraint("CK_Photos_Size", "\"Width\" > 0 AND \"Height\" > 0 AND \"Bytes\" > 0");
            table.HasCheckConstraint("CK_Photos_Taken", Checks.Range("Taken"));
        });
    }
}
