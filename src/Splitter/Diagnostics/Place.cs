namespace Splitter.Diagnostics;

/// <summary>
/// Where something stands in an input file. Line and column count from 1; 0 means the file as a whole.
/// </summary>
public readonly record struct Place(string File, int Line, int Column) : IComparable<Place>
{
    /// <summary>The file as a whole.</summary>
    public static Place Whole(string file) => new(file, 0, 0);

    /// <summary>Order by file (ordinal), line, column.</summary>
    public int CompareTo(Place other)
    {
        var byFile = string.CompareOrdinal(File, other.File);
        return byFile != 0 ? byFile : (Line, Column).CompareTo((other.Line, other.Column));
    }

    /// <summary><c>file(line,col)</c>, the form that MSBuild and editors read.</summary>
    public override string ToString() => Line > 0 ? $"{File}({Line},{Column})" : File;
}
