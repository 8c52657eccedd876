namespace Clutchwright.Cli.Backups;

/// <summary>A setting by an environment variable or an option cannot be read; the message says which, and what would be right.</summary>
internal sealed class SettingUnreadableException(string message) : Exception(message);
