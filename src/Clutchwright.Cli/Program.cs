using System.Text;
using Clutchwright.Cli;
using Clutchwright.Cli.Words;

Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
return await CommandLine.RunAsync(args, Terminal.OfConsole(), CancellationToken.None);
