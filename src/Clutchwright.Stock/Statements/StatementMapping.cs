using Clutchwright.Stock.Animals;
using Clutchwright.Stock.Storage;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace Clutchwright.Stock.Statements;

internal sealed class StatementMapping : IEntityTypeConfiguration<Statement>
{
    public void Configure(EntityTypeBuilder<Statement> builder)
    {
        builder.HasKey(s => s.StatementId);
        builder.Property(s => s.StatementId).ValueGeneratedNever();
        builder.Property(s => s.Text).HasMaxLength(Statement.MaxTextLength);
        builder.Property(s => s.By).HasMaxLength(Statement.MaxByLength);
        builder.Property(s => s.TestFound);
        builder.Property(s => s.TestSensitivity);
        builder.Property(s => s.TestSpecificity);
        builder.Property(s => s.SearchText);
        builder.Property(s => s.Version).IsConcurrencyToken();
        builder.Ignore(s => s.Test);
        builder.ComplexProperty(s => s.When, when =>
        {
            when.Property(d => d.Words).HasMaxLength(DateRange.MaxWordsLength);
            when.Ignore(d => d.IsExact);
        });
        builder.ToTable("Statements", table =>
        {
            table.HasCheckConstraint("CK_Statements_Kind", Checks.OneOf<StatementKind>("Kind"));
            table.HasCheckConstraint("CK_Statements_Text", "(\"Kind\" = 'LookedAtNormal') = (length(\"Text\") = 0)");
            table.HasCheckConstraint("CK_Statements_Confidence", "\"Confidence\" > 0 AND \"Confidence\" <= 1");
            table.HasCheckConstraint("CK_Statements_When", Checks.Range("When"));
            table.HasCheckConstraint(
                "CK_Statements_Test",
                "(\"Kind\" = 'DnaTest') = (\"TestFound\" IS NOT NULL)"
                + " AND (\"TestFound\" IS NULL) = (\"TestSensitivity\" IS NULL) AND (\"TestFound\" IS NULL) = (\"TestSpecificity\" IS NULL)");
            table.HasCheckConstraint(
                "CK_Statements_TestRates",
                "\"TestSensitivity\" > 0 AND \"TestSensitivity\" <= 1 AND \"TestSpecificity\" > 0 AND \"TestSpecificity\" <= 1");
        });
    }
}
