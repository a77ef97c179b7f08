namespace Splitter.Artwork.Svg.Paths;

/// <summary>
/// Path data (SVG 1.1, 8.3). An error ends the path: what stands before the faulty segment is drawn (SVG 1.1, F.2).
/// </summary>
internal sealed class PathDataReader
{
    private const string Commands = "MmZzLlHhVvCcSsQqTtAa";

    private readonly Scanner scanner;
    private readonly Outline outline = new();
    private Subpath? path;
    private Spot at;

    /// <summary>The last control point, which a smooth curve of the same kind mirrors.</summary>
    private Spot control;

    private PathDataReader(string data) => scanner = new(data);

    /// <returns>Where the first fault stands (a count of characters from 0), or null.</returns>
    internal static (Outline Outline, int? Fault) Read(string data)
    {
        var reader = new PathDataReader(data);
        var fault = data.Trim() == "none" ? null : reader.Run();
        return (reader.outline, fault);
    }

    private int? Run()
    {
        var (command, previous) = ('\0', '\0');
        scanner.SkipSpace();
        while (!scanner.AtEnd)
        {
            var start = scanner.Position;
            if (char.IsAsciiLetter(scanner.Next))
            {
                command = scanner.Next;
                scanner.Skip();
                scanner.SkipSpace();
            }
            else if (command is '\0' or 'z' or 'Z')
                return start;
            else if (command is 'm' or 'M')
                command = command == 'm' ? 'l' : 'L';
            if (!Commands.Contains(command, StringComparison.Ordinal) || (path is null && command is not ('m' or 'M')))
                return start;
            if (!Segment(command, char.ToUpperInvariant(previous)))
                return scanner.AtEnd ? start : scanner.Position;
            previous = command;
            var end = scanner.Position;
            if (scanner.SkipSeparator() && (scanner.AtEnd || char.IsAsciiLetter(scanner.Next) || command is 'z' or 'Z'))
                return end;
        }
        return null;
    }

    private bool Segment(char command, char previous)
    {
        var origin = char.IsAsciiLetterLower(command) ? at : default;
        Span<double> n = stackalloc double[7];
        switch (char.ToUpperInvariant(command))
        {
            case 'M' when Numbers(n[..2]):
                at = origin + new Spot(n[0], n[1]);
                path = outline.Begin(at);
                return at.IsFinite;
            case 'Z':
                path!.Close();
                at = path.Start;
                return true;
            case 'L' when Numbers(n[..2]):
                return Line(origin + new Spot(n[0], n[1]));
            case 'H' when Numbers(n[..1]):
                return Line(new(origin.X + n[0], at.Y));
            case 'V' when Numbers(n[..1]):
                return Line(new(at.X, origin.Y + n[0]));
            case 'C' when Numbers(n[..6]):
                return Cubic(
                    origin + new Spot(n[0], n[1]),
                    origin + new Spot(n[2], n[3]),
                    origin + new Spot(n[4], n[5])
                );
            case 'S' when Numbers(n[..4]):
                return Cubic(
                    previous is 'C' or 'S' ? Mirrored : at,
                    origin + new Spot(n[0], n[1]),
                    origin + new Spot(n[2], n[3])
                );
            case 'Q' when Numbers(n[..4]):
                return Quadratic(origin + new Spot(n[0], n[1]), origin + new Spot(n[2], n[3]));
            case 'T' when Numbers(n[..2]):
                return Quadratic(previous is 'Q' or 'T' ? Mirrored : at, origin + new Spot(n[0], n[1]));
            case 'A':
                return Arc(n, origin);
            default:
                return false;
        }
    }

    private Spot Mirrored => at + (at - control);

    /// <summary>After a close, drawing goes on from the closed subpath's start in a new one.</summary>
    private Subpath Open => path!.Closed ? path = outline.Begin(at) : path;

    private bool Line(Spot end)
    {
        if (!end.IsFinite)
            return false;
        Open.Line(end);
        at = end;
        return true;
    }

    private bool Cubic(Spot control1, Spot control2, Spot end)
    {
        if (!control1.IsFinite || !control2.IsFinite || !end.IsFinite)
            return false;
        Open.Cubic(control1, control2, end);
        (control, at) = (control2, end);
        return true;
    }

    private bool Quadratic(Spot middle, Spot end)
    {
        if (!middle.IsFinite || !end.IsFinite)
            return false;
        Open.Quadratic(middle, end);
        (control, at) = (middle, end);
        return true;
    }

    private bool Arc(Span<double> n, Spot origin)
    {
        if (!Numbers(n[..3]))
            return false;
        scanner.SkipSeparator();
        if (!scanner.TryFlag(out var large))
            return false;
        scanner.SkipSeparator();
        if (!scanner.TryFlag(out var clockwise))
            return false;
        scanner.SkipSeparator();
        if (!Numbers(n[3..5]))
            return false;
        var end = origin + new Spot(n[3], n[4]);
        if (!end.IsFinite)
            return false;
        ArcReader.Add(Open, new(n[0], n[1]), n[2], large, clockwise, end);
        at = end;
        return true;
    }

    private bool Numbers(Span<double> numbers)
    {
        for (var i = 0; i < numbers.Length; i++)
        {
            if (i > 0)
                scanner.SkipSeparator();
            if (!scanner.TryNumber(out numbers[i]))
                return false;
        }
        return true;
    }
}
