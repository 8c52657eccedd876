namespace Clutchwright.Desk.Incubators;

/// <summary>In what the keeper reads temperatures. The book holds degrees Celsius whatever it is.</summary>
public enum TemperatureUnit
{
    Celsius = 1,
    Fahrenheit = 2,
}
