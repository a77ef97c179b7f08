using CsCheck;
using Splitter.Outputs.Sheets.Watching;
using Splitter.Tapes;

namespace Splitter.Tests.Outputs.Sheets.Watching;

/// <summary>What the page's script unpacks is the tape.</summary>
public sealed class PackedTapeTests
{
    private static readonly Gen<TapeRecord> Record =
        from command in Gen.Enum<TapeCommand>()
        from u in Gen.Int[-TapeRecord.Longest, TapeRecord.Longest]
        from v in Gen.Int[-TapeRecord.Longest, TapeRecord.Longest]
        select command == TapeCommand.Stop ? new TapeRecord(command, 0, 0) : new TapeRecord(command, u, v);

    [Fact]
    public void EveryRecordComesBack() =>
        Record
            .List[0, 200]
            .Holds(records =>
            {
                var packed = PackedTape.Of(new("any", [.. records]));
                var moves = Convert.FromBase64String(packed.Moves).Select(b => (int)(sbyte)b).ToArray();
                var back = new List<TapeRecord>();
                var at = 0;
                foreach (var run in packed.Runs.Chunk(2))
                    for (var i = 0; i < run[1]; i++)
                        if ((TapeCommand)run[0] == TapeCommand.Stop)
                            back.Add(new(TapeCommand.Stop, 0, 0));
                        else
                            back.Add(new((TapeCommand)run[0], moves[at++], moves[at++]));
                Assert.Equal(records, back);
                Assert.Equal(moves.Length, at);
            });
}
