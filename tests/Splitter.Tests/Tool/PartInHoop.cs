using System.Globalization;
using System.Text;

namespace Splitter.Tests.Tool;

/// <summary>A small work of two parts in a folder of its own, the second of them in the hoop.</summary>
/// <param name="name">Of the recipe's file.</param>
internal sealed class PartInHoop(string name, string recipe) : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("splitter-hoop-").FullName;

    internal static PartInHoop OfSails =>
        new(
            "sails.yaml",
            CommandTests.Recipe.Replace(
                "files: [tape, csv]",
                "files: [tape, csv, svg, worksheet]",
                StringComparison.Ordinal
            )
        );

    public void Dispose() => Directory.Delete(root, recursive: true);

    /// <summary>The folder of the corrected part.</summary>
    internal string Corrected => At("parts", "small-part-B-corrected");

    internal string At(params string[] names) => Path.Combine([root, .. names]);

    /// <summary>A file that the recipe names.</summary>
    internal PartInHoop With(string file, byte[] bytes)
    {
        File.WriteAllBytes(At(file), bytes);
        return this;
    }

    /// <param name="more">What the recipe says beside its shapes and hoops.</param>
    internal string Written(string more = "")
    {
        File.WriteAllText(At(name), $"{recipe}\n{more}\n");
        return At(name);
    }

    internal Task<Ran> Make(string more = "") => ToolRun.Run("make", Written(more), "--hoop", "small");

    internal Task<Ran> Realign(params string[] offsets) =>
        ToolRun.Run(["realign", At(name), "--hoop", "small", "--part", "B", .. offsets]);

    /// <summary>Left, right, bottom and top in the header of a tape, steps of 0.1 mm.</summary>
    internal (int Left, int Right, int Bottom, int Top) Extents(params string[] tape)
    {
        var header = Encoding.ASCII.GetString(File.ReadAllBytes(At(tape)).AsSpan(0, 512)).Split('\r');
        return (-Of("-X:"), Of("+X:"), -Of("-Y:"), Of("+Y:"));

        int Of(string key) =>
            int.Parse(
                header.Single(line => line.StartsWith(key, StringComparison.Ordinal))[3..],
                CultureInfo.InvariantCulture
            );
    }

    internal List<Sewn> Stitches(params string[] csv) =>
        [
            .. File.ReadLines(At(csv))
                .Skip(1)
                .Select(line => line.Split(','))
                .Select(c => new Sewn(
                    c[1],
                    c[3],
                    decimal.Parse(c[5], CultureInfo.InvariantCulture),
                    decimal.Parse(c[6], CultureInfo.InvariantCulture),
                    decimal.Parse(c[7], CultureInfo.InvariantCulture),
                    decimal.Parse(c[8], CultureInfo.InvariantCulture)
                )),
        ];
}

/// <summary>A needle hole: in the hoop, and on the drawing.</summary>
internal sealed record Sewn(string Kind, string Of, decimal U, decimal V, decimal X, decimal Y);
