using Clutchwright.Web.Hosting;
using Xunit;

namespace Clutchwright.Web.Tests.Hosting;

public sealed class ListenAddressesTests
{
    [Theory]
    [InlineData("http://localhost:5417")]
    [InlineData("http://127.0.0.1:0")]
    [InlineData("http://127.9.8.7:80")]
    [InlineData("http://[::1]:5417")]
    public void IsLoopback_OnlyThisMachine_True(string url) => Assert.True(ListenAddresses.IsLoopback(url));

    [Theory]
    [InlineData("http://*:5417")]
    [InlineData("http://+:80")]
    [InlineData("http://0.0.0.0:5417")]
    [InlineData("http://[::]:5417")]
    [InlineData("http://192.168.1.7:5417")]
    [InlineData("http://snake-room.example:5417")]
    [InlineData("http://localhost.example:5417")]
    public void IsLoopback_ReachableByOthers_False(string url) => Assert.False(ListenAddresses.IsLoopback(url));

    [Theory]
    [InlineData("--urls", "http://0.0.0.0:5417")]
    [InlineData("--urls", "http://localhost:5417;http://*:5418")]
    [InlineData("--http_ports", "5417")]
    [InlineData("--Kestrel:Endpoints:Open:Url", "http://192.168.1.7:5417")]
    public void Build_OpenAddress_DoesNotStartAndSaysWhy(string setting, string value)
    {
        var refused = Assert.Throws<OpenAddressException>(() => ClutchwrightWeb.Build([setting, value], "nowhere", Path.GetTempPath()));

        Assert.Contains("accounts", refused.Message, StringComparison.Ordinal);
        Assert.Contains("5417", value + refused.Address, StringComparison.Ordinal);
    }
}
