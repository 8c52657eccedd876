using Microsoft.Extensions.DependencyInjection;

namespace Clutchwright.Desk;

/// <summary>Puts the questions of the desk at the disposal of a face.</summary>
public static class DeskServices
{
    /// <summary>Adds every question, over one catalogue folder and one data folder.</summary>
    public static IServiceCollection AddDesk(this IServiceCollection services, string catalogueFolder, string dataFolder) =>
        throw new NotSupportedException("To come.");
}
