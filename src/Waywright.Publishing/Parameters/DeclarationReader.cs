using System.Globalization;
using System.Text;

namespace Waywright.Publishing;

/// <summary>
/// Reads <c>string limit = "30 um"; // note</c> and the like: declarations of string, double, int and bool (or var) with a literal.
/// Anything else is refused: what a run records as a parameter must be what the cell says, without running it.
/// </summary>
internal sealed class DeclarationReader(string code, string source)
{
    private readonly List<Parameter> _found = [];
    private int _at;

    /// <exception cref="InputException">Something else than such declarations, or a name twice.</exception>
    public IReadOnlyList<Parameter> Read()
    {
        while (SkipToStatement())
        {
            var start = _at;
            var type = Word("string, double, int, bool or var");
            if (type is not ("string" or "double" or "int" or "bool" or "var"))
                throw Problem(start, "a declaration of a string, double, int or bool with a literal");
            SkipBlanks();
            var nameAt = _at;
            var name = Word("a name");
            if (_found.Exists(p => p.Name == name))
                throw Problem(nameAt, "each name once");
            Expect('=');
            SkipBlanks();
            var (kind, value) = Literal(type);
            Expect(';');
            _found.Add(new Parameter(name, type == "var" ? kind : type, value, NoteBehind(), IsSet: false));
        }

        return _found;
    }

    private (string Kind, string Value) Literal(string type)
    {
        var start = _at;
        var wanted = type switch { "string" => "a text in quotes", "double" => "a number such as 12.5", "int" => "a whole number such as 12", "bool" => "true or false", _ => "a literal" };
        var (kind, value) = Peek() switch
        {
            '"' => ("string", RegularString()),
            '@' when Peek(1) == '"' => ("string", VerbatimString()),
            >= 'a' and <= 'z' => ("bool", Word(wanted)),
            _ => Number(wanted),
        };
        var fits = kind == "bool" ? value is "true" or "false" && type is "bool" or "var" : kind == type || type == "var" || (kind == "int" && type == "double");
        return fits && !(kind == "bool" && value is not ("true" or "false")) ? (kind, value) : throw Problem(start, wanted);
    }

    private (string Kind, string Value) Number(string wanted)
    {
        var start = _at;
        while (Peek() is '-' or '+' or '.' or '_' || char.IsAsciiLetterOrDigit(Peek()))
            _at++;
        var text = code[start.._at].Replace("_", "", StringComparison.Ordinal);
        if (int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole))
            return ("int", whole.ToString(CultureInfo.InvariantCulture));
        return text.Length > 0 && Parameter.TryDouble(text.TrimEnd('d', 'D'), out var value) ? ("double", value) : throw Problem(start, wanted);
    }

    private string RegularString()
    {
        var text = new StringBuilder();
        for (_at++; Peek() is not ('\0' or '\n' or '"'); _at++)
        {
            if (Peek() != '\\')
            {
                text.Append(Peek());
                continue;
            }

            _at++;
            text.Append(Peek() switch
            {
                '"' or '\\' or '\'' => Peek(),
                'n' => '\n',
                't' => '\t',
                'r' => '\r',
                '0' => '\0',
                'u' => FourDigits(),
                _ => throw Problem(_at - 1, "one of the escapes \\\" \\\\ \\n \\t \\uXXXX"),
            });
        }

        if (Peek() != '"')
            throw Problem(_at, "a closing quote");
        _at++;
        return text.ToString();
    }

    private char FourDigits()
    {
        if (_at + 4 >= code.Length || !ushort.TryParse(code.AsSpan(_at + 1, 4), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var value))
            throw Problem(_at - 1, "four hexadecimal digits after \\u");
        _at += 4;
        return (char)value;
    }

    private string VerbatimString()
    {
        var text = new StringBuilder();
        for (_at += 2; Peek() != '\0' && (Peek() != '"' || Peek(1) == '"'); _at++)
        {
            text.Append(Peek());
            _at += Peek() == '"' ? 1 : 0;
        }

        if (Peek() != '"')
            throw Problem(_at, "a closing quote");
        _at++;
        return text.ToString();
    }

    private string Word(string expected)
    {
        var start = _at;
        while (char.IsLetterOrDigit(Peek()) || Peek() == '_')
            _at++;
        return _at > start && !char.IsDigit(code[start]) ? code[start.._at] : throw Problem(start, expected);
    }

    private void Expect(char mark)
    {
        SkipBlanks();
        if (Peek() != mark)
            throw Problem(_at, $"'{mark}'");
        _at++;
    }

    private string NoteBehind()
    {
        while (Peek() is ' ' or '\t')
            _at++;
        if (Peek() != '/' || Peek(1) != '/')
            return "";
        var start = _at + 2;
        SkipLine();
        return code[start.._at].Trim();
    }

    // To the next statement over blanks and comments; false at the end.
    private bool SkipToStatement()
    {
        while (true)
        {
            SkipBlanks();
            if (Peek() == '/' && Peek(1) == '/')
                SkipLine();
            else if (Peek() == '/' && Peek(1) == '*' && code.IndexOf("*/", _at + 2, StringComparison.Ordinal) is >= 0 and var end)
                _at = end + 2;
            else
                return _at < code.Length;
        }
    }

    private void SkipLine()
    {
        while (Peek() is not ('\0' or '\n'))
            _at++;
    }

    private void SkipBlanks()
    {
        while (char.IsWhiteSpace(Peek()))
            _at++;
    }

    private char Peek(int ahead = 0) => _at + ahead < code.Length ? code[_at + ahead] : '\0';

    private InputException Problem(int at, string expected)
    {
        var before = code.AsSpan(0, Math.Min(at, code.Length));
        var rest = code.AsSpan(before.Length);
        var word = rest[..Math.Max(Math.Min(1, rest.Length), rest.IndexOfAny(" ;\n=") is var length && length < 0 ? Math.Min(rest.Length, 30) : Math.Min(length, 30))];
        return new InputException(new InputProblem(
            source,
            before.Count('\n') + 1,
            before.Length - (before.LastIndexOf('\n') + 1) + 1,
            word.IsEmpty || word is "\n" ? "the end of the line" : $"'{word}'",
            expected));
    }
}
