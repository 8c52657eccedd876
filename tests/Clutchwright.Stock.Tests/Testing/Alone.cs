using Xunit;

namespace Clutchwright.Stock.Tests.Testing;

/// <summary>For tests that need the machine to themselves.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
