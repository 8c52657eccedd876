using Clutchwright.Stock.Export;

namespace Clutchwright.Desk.Leaving;

/// <summary>What lies in the ZIP of a whole book, for whoever opens it.</summary>
internal static class BookReadme
{
    public static readonly string Text =
        $"""
        A keeper's book, whole
        ======================

        {BookFormat.JsonEntry}        everything: UTF-8, days as 2026-05-01, instants in UTC, masses in g, temperatures in °C.
                         What was put in the bin or taken back is here too (binnedAt, withdrawnAt).
                         Clutchwright reads this file, and the photos, back into an empty book.
        photos/          each picture once, named by the tag of the animal and the day it was taken; book.json has its SHA-256

        For spreadsheets and other programs, what stands today (CSV, RFC 4180, UTF-8; a text that a
        spreadsheet would take for a formula has an apostrophe before it):

        animals.csv      animals, their parents, and what is said of them
        statements.csv   each statement by itself: who said what, when, how surely
        clutches.csv     clutches; several possible sires are parted by |
        log.csv          everything that happened, by day
        incubators.csv   incubators and their limits
        readings.csv     what was read off them
        photos.csv       which file shows which animal, when

        pedigree.ped     the pedigree in linkage format, with pedigree.map and pedigree.phe; pedigree.txt says what the columns mean

        Not here: the history of who changed what when. A backup (book backup) carries it.

        """;
}
