using Clutchwright.Stock.Export;
using CsCheck;
using Xunit;

namespace Clutchwright.Stock.Tests.Export;

public sealed class SpreadsheetCellTests
{
    // Characters that start a formula: OWASP, "CSV Injection" [recalled].
    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+1", "'+1")]
    [InlineData("-1", "'-1")]
    [InlineData("@SUM(A1)", "'@SUM(A1)")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("＝1", "'＝1")]
    [InlineData("'=1", "''=1")]
    [InlineData("'quoted'", "'quoted'")]
    [InlineData("'", "'")]
    [InlineData("a=1", "a=1")]
    [InlineData("", "")]
    public void Protect_StartOfAFormula_GetsAnApostrophe(string text, string cell)
    {
        Assert.Equal(cell, SpreadsheetCell.Protect(text));
        Assert.Equal(text, SpreadsheetCell.Unprotect(cell));
    }

    [Fact]
    public void Unprotect_WhatWasProtected_IsTheText() => Gen.String[Gen.OneOf(Gen.Const('\''), Gen.Const('='), Gen.Const('-'), Gen.Const('\t'), Gen.Const('a')), 0, 6]
        .Sample(text =>
        {
            var cell = SpreadsheetCell.Protect(text);

            Assert.Equal(text, SpreadsheetCell.Unprotect(cell));
            Assert.DoesNotContain(cell.Length > 0 ? cell[0] : 'a', "=+-@\t\r\n");
        });
}
