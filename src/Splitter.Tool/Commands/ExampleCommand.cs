using System.CommandLine;

namespace Splitter.Tool.Commands;

/// <summary>A command whose help shows how it is called.</summary>
internal sealed class ExampleCommand(string name, string description, params string[] examples)
    : Command(name, description)
{
    internal IReadOnlyList<string> Examples { get; } = examples;
}
