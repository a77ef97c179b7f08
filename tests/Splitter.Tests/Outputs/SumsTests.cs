using System.Diagnostics;
using System.Text;
using Splitter.Outputs;

namespace Splitter.Tests.Outputs;

public sealed class SumsTests
{
    /// <summary>FIPS 180-4 example values: one block, two blocks, and nothing at all.</summary>
    [Theory]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData(
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    )]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    public void SumsAreThoseOfTheStandard(string text, string sum) =>
        Assert.Equal(sum, SumsWriter.Sum(Encoding.ASCII.GetBytes(text)));

    [SkippableFact]
    public void TheSumsPassTheSystemsOwnCheck()
    {
        Skip.IfNot(File.Exists("/usr/bin/sha256sum"), "sha256sum is not installed (GNU coreutils).");
        var folder = Directory.CreateTempSubdirectory("splitter-sums-");
        try
        {
            foreach (var file in HandMade.Set.Files)
                File.WriteAllBytes(Path.Combine(folder.FullName, file.Path.Split('/')[^1]), file.Bytes.ToArray());
            Assert.Equal((0, HandMade.Set.Files.Length - 1), Check(folder.FullName));
            File.AppendAllText(Path.Combine(folder.FullName, "manifest.json"), " ");
            Assert.Equal(1, Check(folder.FullName).ExitCode);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static (int ExitCode, int Passed) Check(string folder)
    {
        using var process = Process.Start(
            new ProcessStartInfo("/usr/bin/sha256sum", ["-c", "SHA256SUMS"])
            {
                WorkingDirectory = folder,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            }
        )!;
        var lines = process.StandardOutput.ReadToEnd().Split('\n');
        process.WaitForExit();
        return (process.ExitCode, lines.Count(l => l.EndsWith(": OK", StringComparison.Ordinal)));
    }
}
