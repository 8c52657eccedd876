using System.CommandLine;
using Clutchwright.Cli.Words;

namespace Clutchwright.Cli.Proofs;

/// <summary><c>proof</c>: what the clutches prove, and which test pairing would settle a doubt soonest.</summary>
internal static class ProofCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) =>
        new("proof", "What the clutches prove, and which test pairing would settle a doubt soonest.")
        {
            SegregationCommand.Create(common, terminal),
            HetCommand.Create(common, terminal),
            LinkageCommand.Create(common, terminal),
            MakerCommand.Create(common, terminal),
            AllelismCommand.Create(common, terminal),
            ModeCommand.Create(common, terminal),
            DesignCommand.Create(common, terminal),
        };
}
