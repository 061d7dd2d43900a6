using System.CommandLine;
using System.CommandLine.Parsing;

namespace Waywright.Cli;

/// <summary>What is wrong with how the command was typed; the parser's own words where they are clear.</summary>
internal static class UseFaults
{
    public static IReadOnlyList<string> Of(ParseResult parsed)
    {
        var at = parsed.CommandResult;
        var command = at.Command;
        if (UnknownOption(parsed) is { } option)
            return [$"{NameOf(at)}: found the option '{option}', expected one of {string.Join(", ", command.Options.Select(o => o.Name))}"];
        if (parsed.Errors.Count > 0 && command.Subcommands.Count > 0)
            return [$"{NameOf(at)}: found {(parsed.UnmatchedTokens is [var word, ..] ? $"'{word}'" : "no verb")}, expected one of {string.Join(", ", command.Subcommands.Select(c => c.Name))}"];
        return [.. parsed.Errors.Select(e => e.Message)];
    }

    /// <summary>A command as it is typed: <c>waywright kernel run</c>.</summary>
    public static string NameOf(CommandResult command) => command.Parent is CommandResult parent ? $"{NameOf(parent)} {command.Command.Name}" : command.Command.Name;

    // A misspelt option would pass for a notebook's name, or be told of together with its value.
    private static string? UnknownOption(ParseResult parsed)
        => parsed.Tokens.TakeWhile(t => t.Type != TokenType.DoubleDash).FirstOrDefault(t => t.Type == TokenType.Argument && t.Value.StartsWith("--", StringComparison.Ordinal))?.Value;
}
