using System;
using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Clutchwright.Stock.PostgreSql.Migrations
{
    /// <inheritdoc />
    public partial class KeepClutches : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropIndex(
                name: "IX_Happenings_AnimalId",
                table: "Happenings");

            migrationBuilder.DropCheckConstraint(
                name: "CK_Happenings_Kind",
                table: "Happenings");

            migrationBuilder.DropCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes");

            migrationBuilder.AddColumn<Guid>(
                name: "ClutchId",
                table: "Happenings",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<DateOnly>(
                name: "Day",
                table: "Happenings",
                type: "date",
                nullable: false,
                defaultValue: new DateOnly(1, 1, 1));

            migrationBuilder.AddColumn<Guid>(
                name: "ClutchId",
                table: "Animals",
                type: "uuid",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "Incubators",
                columns: table => new
                {
                    IncubatorId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false, collation: "C"),
                    LowestCelsius = table.Column<double>(type: "double precision", nullable: true),
                    HighestCelsius = table.Column<double>(type: "double precision", nullable: true),
                    LowestHumidityPercent = table.Column<double>(type: "double precision", nullable: true),
                    HighestHumidityPercent = table.Column<double>(type: "double precision", nullable: true),
                    Notes = table.Column<string>(type: "character varying(5000)", maxLength: 5000, nullable: false, collation: "C"),
                    RetiredAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Incubators", x => x.IncubatorId);
                    table.CheckConstraint("CK_Incubators_Celsius", "\"LowestCelsius\" <= \"HighestCelsius\"");
                    table.CheckConstraint("CK_Incubators_Humidity", "\"LowestHumidityPercent\" <= \"HighestHumidityPercent\"");
                    table.CheckConstraint("CK_Incubators_Name", "length(\"Name\") BETWEEN 1 AND 60");
                    table.CheckConstraint("CK_Incubators_Percent", "\"LowestHumidityPercent\" >= 0 AND \"HighestHumidityPercent\" <= 100");
                });

            migrationBuilder.CreateTable(
                name: "PhotoContents",
                columns: table => new
                {
                    Digest = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false, collation: "C"),
                    Picture = table.Column<byte[]>(type: "bytea", nullable: false),
                    Thumbnail = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_PhotoContents", x => x.Digest);
                    table.CheckConstraint("CK_PhotoContents_Digest", "length(\"Digest\") = 64");
                });

            migrationBuilder.CreateTable(
                name: "Settings",
                columns: table => new
                {
                    SettingId = table.Column<Guid>(type: "uuid", nullable: false),
                    Name = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false, collation: "C"),
                    Value = table.Column<string>(type: "character varying(100000)", maxLength: 100000, nullable: false, collation: "C"),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Settings", x => x.SettingId);
                });

            migrationBuilder.CreateTable(
                name: "Clutches",
                columns: table => new
                {
                    ClutchId = table.Column<Guid>(type: "uuid", nullable: false),
                    Tag = table.Column<string>(type: "character varying(60)", maxLength: 60, nullable: false, collation: "C"),
                    DamId = table.Column<Guid>(type: "uuid", nullable: false),
                    GoodEggs = table.Column<int>(type: "integer", nullable: true),
                    Slugs = table.Column<int>(type: "integer", nullable: true),
                    MassGrams = table.Column<double>(type: "double precision", nullable: true),
                    IncubatorId = table.Column<Guid>(type: "uuid", nullable: true),
                    Notes = table.Column<string>(type: "character varying(20000)", maxLength: 20000, nullable: false, collation: "C"),
                    BinnedAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    TagKey = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Sires = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Counted = table.Column<string>(type: "text", nullable: false, collation: "C"),
                    Hatched_Earliest = table.Column<DateOnly>(type: "date", nullable: true),
                    Hatched_Latest = table.Column<DateOnly>(type: "date", nullable: true),
                    Hatched_Words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true, collation: "C"),
                    Laid_Earliest = table.Column<DateOnly>(type: "date", nullable: false),
                    Laid_Latest = table.Column<DateOnly>(type: "date", nullable: false),
                    Laid_Words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: false, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Clutches", x => x.ClutchId);
                    table.CheckConstraint("CK_Clutches_GoodEggs", "\"GoodEggs\" BETWEEN 0 AND 200");
                    table.CheckConstraint("CK_Clutches_Hatched", "(\"Hatched_Earliest\" IS NULL AND \"Hatched_Latest\" IS NULL AND \"Hatched_Words\" IS NULL) OR (\"Hatched_Earliest\" IS NOT NULL AND \"Hatched_Latest\" IS NOT NULL AND \"Hatched_Words\" IS NOT NULL AND \"Hatched_Earliest\" <= \"Hatched_Latest\")");
                    table.CheckConstraint("CK_Clutches_Laid", "\"Laid_Earliest\" <= \"Laid_Latest\"");
                    table.CheckConstraint("CK_Clutches_MassGrams", "\"MassGrams\" > 0");
                    table.CheckConstraint("CK_Clutches_Order", "\"Laid_Earliest\" <= \"Hatched_Latest\"");
                    table.CheckConstraint("CK_Clutches_Slugs", "\"Slugs\" BETWEEN 0 AND 200");
                    table.CheckConstraint("CK_Clutches_Tag", "length(\"Tag\") BETWEEN 1 AND 60");
                    table.ForeignKey(
                        name: "FK_Clutches_Animals_DamId",
                        column: x => x.DamId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Clutches_Incubators_IncubatorId",
                        column: x => x.IncubatorId,
                        principalTable: "Incubators",
                        principalColumn: "IncubatorId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Readings",
                columns: table => new
                {
                    ReadingId = table.Column<Guid>(type: "uuid", nullable: false),
                    IncubatorId = table.Column<Guid>(type: "uuid", nullable: false),
                    TakenAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: false),
                    Celsius = table.Column<double>(type: "double precision", nullable: true),
                    HumidityPercent = table.Column<double>(type: "double precision", nullable: true),
                    Text = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false, collation: "C"),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Readings", x => x.ReadingId);
                    table.CheckConstraint("CK_Readings_Humidity", "\"HumidityPercent\" BETWEEN 0 AND 100");
                    table.CheckConstraint("CK_Readings_Something", "\"Celsius\" IS NOT NULL OR \"HumidityPercent\" IS NOT NULL");
                    table.ForeignKey(
                        name: "FK_Readings_Incubators_IncubatorId",
                        column: x => x.IncubatorId,
                        principalTable: "Incubators",
                        principalColumn: "IncubatorId",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "Photos",
                columns: table => new
                {
                    PhotoId = table.Column<Guid>(type: "uuid", nullable: false),
                    AnimalId = table.Column<Guid>(type: "uuid", nullable: false),
                    Digest = table.Column<string>(type: "character varying(64)", maxLength: 64, nullable: false, collation: "C"),
                    Width = table.Column<int>(type: "integer", nullable: false),
                    Height = table.Column<int>(type: "integer", nullable: false),
                    Bytes = table.Column<long>(type: "bigint", nullable: false),
                    Caption = table.Column<string>(type: "character varying(500)", maxLength: 500, nullable: false, collation: "C"),
                    WithdrawnAt = table.Column<DateTime>(type: "timestamp with time zone", nullable: true),
                    Version = table.Column<Guid>(type: "uuid", nullable: false),
                    Taken_Earliest = table.Column<DateOnly>(type: "date", nullable: true),
                    Taken_Latest = table.Column<DateOnly>(type: "date", nullable: true),
                    Taken_Words = table.Column<string>(type: "character varying(200)", maxLength: 200, nullable: true, collation: "C")
                },
                constraints: table =>
                {
                    table.PrimaryKey("PK_Photos", x => x.PhotoId);
                    table.CheckConstraint("CK_Photos_Size", "\"Width\" > 0 AND \"Height\" > 0 AND \"Bytes\" > 0");
                    table.CheckConstraint("CK_Photos_Taken", "(\"Taken_Earliest\" IS NULL AND \"Taken_Latest\" IS NULL AND \"Taken_Words\" IS NULL) OR (\"Taken_Earliest\" IS NOT NULL AND \"Taken_Latest\" IS NOT NULL AND \"Taken_Words\" IS NOT NULL AND \"Taken_Earliest\" <= \"Taken_Latest\")");
                    table.ForeignKey(
                        name: "FK_Photos_Animals_AnimalId",
                        column: x => x.AnimalId,
                        principalTable: "Animals",
                        principalColumn: "AnimalId",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "FK_Photos_PhotoContents_Digest",
                        column: x => x.Digest,
                        principalTable: "PhotoContents",
                        principalColumn: "Digest",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_AnimalId_Kind_Day",
                table: "Happenings",
                columns: new[] { "AnimalId", "Kind", "Day" });

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_ClutchId",
                table: "Happenings",
                column: "ClutchId");

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_Day_HappeningId",
                table: "Happenings",
                columns: new[] { "Day", "HappeningId" });

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_Kind_Day",
                table: "Happenings",
                columns: new[] { "Kind", "Day" });

            migrationBuilder.AddCheckConstraint(
                name: "CK_Happenings_Kind",
                table: "Happenings",
                sql: "\"Kind\" IN ('Weighed', 'Fed', 'FoodRefused', 'Shed', 'Introduced', 'Locked', 'Separated', 'FolliclesMeasured', 'Ovulated', 'PreLayShed', 'Laid', 'Candled', 'EggsLost', 'Pipped', 'Moved', 'Health', 'Noted', 'Acquired', 'Sold', 'GivenAway', 'Died')");

            migrationBuilder.CreateIndex(
                name: "IX_Changes_Kind_DeedId",
                table: "Changes",
                columns: new[] { "Kind", "DeedId" });

            migrationBuilder.AddCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes",
                sql: "\"Kind\" IN ('Animal', 'Statement', 'Season', 'Route', 'Happening', 'Clutch', 'Incubator', 'Reading', 'Photo', 'Setting')");

            migrationBuilder.CreateIndex(
                name: "IX_Animals_ClutchId",
                table: "Animals",
                column: "ClutchId");

            migrationBuilder.CreateIndex(
                name: "IX_Clutches_DamId",
                table: "Clutches",
                column: "DamId");

            migrationBuilder.CreateIndex(
                name: "IX_Clutches_IncubatorId",
                table: "Clutches",
                column: "IncubatorId");

            migrationBuilder.CreateIndex(
                name: "IX_Clutches_TagKey",
                table: "Clutches",
                column: "TagKey",
                unique: true,
                filter: "\"BinnedAt\" IS NULL");

            migrationBuilder.CreateIndex(
                name: "IX_Photos_AnimalId",
                table: "Photos",
                column: "AnimalId");

            migrationBuilder.CreateIndex(
                name: "IX_Photos_Digest",
                table: "Photos",
                column: "Digest");

            migrationBuilder.CreateIndex(
                name: "IX_Readings_IncubatorId_TakenAt",
                table: "Readings",
                columns: new[] { "IncubatorId", "TakenAt" });

            migrationBuilder.CreateIndex(
                name: "IX_Settings_Name",
                table: "Settings",
                column: "Name",
                unique: true);

            migrationBuilder.AddForeignKey(
                name: "FK_Animals_Clutches_ClutchId",
                table: "Animals",
                column: "ClutchId",
                principalTable: "Clutches",
                principalColumn: "ClutchId",
                onDelete: ReferentialAction.Restrict);

            migrationBuilder.AddForeignKey(
                name: "FK_Happenings_Clutches_ClutchId",
                table: "Happenings",
                column: "ClutchId",
                principalTable: "Clutches",
                principalColumn: "ClutchId",
                onDelete: ReferentialAction.Restrict);

            // What was written before is sorted by its last day too.
            migrationBuilder.Sql("UPDATE \"Happenings\" SET \"Day\" = \"When_Latest\"");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "FK_Animals_Clutches_ClutchId",
                table: "Animals");

            migrationBuilder.DropForeignKey(
                name: "FK_Happenings_Clutches_ClutchId",
                table: "Happenings");

            migrationBuilder.DropTable(
                name: "Clutches");

            migrationBuilder.DropTable(
                name: "Photos");

            migrationBuilder.DropTable(
                name: "Readings");

            migrationBuilder.DropTable(
                name: "Settings");

            migrationBuilder.DropTable(
                name: "PhotoContents");

            migrationBuilder.DropTable(
                name: "Incubators");

            migrationBuilder.DropIndex(
                name: "IX_Happenings_AnimalId_Kind_Day",
                table: "Happenings");

            migrationBuilder.DropIndex(
                name: "IX_Happenings_ClutchId",
                table: "Happenings");

            migrationBuilder.DropIndex(
                name: "IX_Happenings_Day_HappeningId",
                table: "Happenings");

            migrationBuilder.DropIndex(
                name: "IX_Happenings_Kind_Day",
                table: "Happenings");

            migrationBuilder.DropCheckConstraint(
                name: "CK_Happenings_Kind",
                table: "Happenings");

            migrationBuilder.DropIndex(
                name: "IX_Changes_Kind_DeedId",
                table: "Changes");

            migrationBuilder.DropCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes");

            migrationBuilder.DropIndex(
                name: "IX_Animals_ClutchId",
                table: "Animals");

            migrationBuilder.DropColumn(
                name: "ClutchId",
                table: "Happenings");

            migrationBuilder.DropColumn(
                name: "Day",
                table: "Happenings");

            migrationBuilder.DropColumn(
                name: "ClutchId",
                table: "Animals");

            migrationBuilder.CreateIndex(
                name: "IX_Happenings_AnimalId",
                table: "Happenings",
                column: "AnimalId");

            migrationBuilder.AddCheckConstraint(
                name: "CK_Happenings_Kind",
                table: "Happenings",
                sql: "\"Kind\" IN ('Weighed', 'Fed', 'FoodRefused', 'Shed', 'Introduced', 'Locked', 'Separated', 'FolliclesMeasured', 'Ovulated', 'PreLayShed', 'Laid', 'Moved', 'Health', 'Noted')");

            migrationBuilder.AddCheckConstraint(
                name: "CK_Changes_Kind",
                table: "Changes",
                sql: "\"Kind\" IN ('Animal', 'Statement', 'Season', 'Route', 'Happening')");
        }
    }
}
