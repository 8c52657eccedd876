namespace Clutchwright.Web.Hosting;

/// <summary>The app was asked to listen where other machines can reach it, which needs accounts.</summary>
public sealed class OpenAddressException : Exception
{
    /// <summary>Makes the exception.</summary>
    /// <param name="address">The address that was asked for.</param>
    public OpenAddressException(string address)
        : base($"The address {address} can be reached from other machines. That needs accounts, and there are none yet, "
            + $"so the app does not start. Use a loopback address, for example {ClutchwrightWeb.DefaultUrl}.") =>
        Address = address;

    /// <summary>Gets the address that was asked for.</summary>
    public string Address { get; }
}
