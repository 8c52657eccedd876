using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.History;

internal sealed class ChangeMapping : IEntityTypeConfiguration<Change>
{
    public void Configure(EntityTypeBuilder<Change> builder)
    {
        builder.HasKey(c => new { c.DeedId, c.Number });
        builder.HasIndex(c => new { c.RecordId, c.DeedId });
        builder.HasIndex(c => new { c.Kind, c.DeedId });
        builder.ToTable("Changes", table =>
        {
            table.HasCheckConstraint("CK_Changes_Kind", Checks.OneOf<RecordKind>("Kind"));
            table.HasCheckConstraint("CK_Changes_Something", "\"Before\" IS NOT NULL OR \"After\" IS NOT NULL");
        });
    }
}
