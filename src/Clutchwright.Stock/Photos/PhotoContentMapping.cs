using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Photos;

internal sealed class PhotoContentMapping : IEntityTypeConfiguration<PhotoContent>
{
    /// <summary>SHA-256 in hexadecimal.</summary>
    public const int DigestLength = 64;

    public void Configure(EntityTypeBuilder<PhotoContent> builder)
    {
        builder.HasKey(c => c.Digest);
        builder.Property(c => c.Digest).HasMaxLength(DigestLength).ValueGeneratedNever();
        builder.ToTable("PhotoContents", table => table.HasCheckConstraint("CK_PhotoContents_Digest", $"length(\"Digest\") = {DigestLength}"));
    }
}
