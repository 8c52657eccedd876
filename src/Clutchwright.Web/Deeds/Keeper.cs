namespace Clutchwright.Web.Deeds;

/// <summary>By whom deeds are done. The app answers only on this machine and has no accounts, so there is one keeper.</summary>
internal static class Keeper
{
    public const string Name = "keeper";
}
