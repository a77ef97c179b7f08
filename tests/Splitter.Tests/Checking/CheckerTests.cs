using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Splitter.Checking;
using Splitter.Geometry;
using Splitter.Outputs;
using Splitter.Outputs.Pictures;
using Splitter.Parts;
using Splitter.Recipes;
using Splitter.Stitching;
using Splitter.Tests.Outputs;

namespace Splitter.Tests.Checking;

public sealed class CheckerTests
{
    /// <summary>Without pictures, which would take most of the time.</summary>
    internal static readonly PartSet Set = Made(HandMade.Parts);

    private static PartSet Made(ImmutableArray<Part> parts) => HandMade.SetOf(parts, OutputKind.Tape, OutputKind.Csv);

    internal static Dictionary<string, byte[]> Disk(PartSet set) =>
        set.Files.ToDictionary(f => f.Path, f => f.Bytes.ToArray());

    internal static SetDifferences Check(PartSet expected, Dictionary<string, byte[]> disk) =>
        Checker.Compare(SetSide.OnDisk(expected.Plan.Hoop.Name, disk.GetValueOrDefault), SetSide.Of(expected));

    /// <summary>The set with one block of a part moved or cut.</summary>
    private static PartSet With(int part, int step, int move, Func<Block, Block> change)
    {
        var steps = Set.Parts[part].Steps;
        var moves = steps[step].Moves;
        var changed = steps.SetItem(
            step,
            steps[step] with
            {
                Moves = moves.SetItem(move, moves[move] with { Block = change(moves[move].Block) }),
            }
        );
        return Made(Set.Parts.SetItem(part, Set.Parts[part] with { Steps = changed }));
    }

    private static Block Shifted(Block block, int x, int y) =>
        block with
        {
            Stitches = [.. block.Stitches.Select(s => s with { At = s.At + new Point(x, y) })],
        };

    [Fact]
    public void WhatWasMadeOfTheSameIsTheSame()
    {
        var differences = Check(Set, Disk(Set));
        Assert.True(differences.AreNone);
        Assert.Empty(differences.Parts);
        Assert.Empty(DifferenceText.Of(differences));
    }

    /// <summary>Machines centre a design by the extents that its header says.</summary>
    [Fact]
    public void ATapeWhoseHeaderSaysAnotherSizeDiffersInMoreThanItsLabel()
    {
        var disk = Disk(Set);
        var text = Encoding.ASCII.GetString(disk["small/part-A.dst"]);
        disk["small/part-A.dst"][text.IndexOf("+X:", StringComparison.Ordinal) + 3]++;
        disk["small/part-B.dst"][text.IndexOf("LA:", StringComparison.Ordinal) + 3]++;
        var (size, label) = Check(Set, disk).Files switch
        {
            [var a, var b] => (a, b),
            var other => throw new InvalidOperationException($"{other.Length} files differ."),
        };
        Assert.True(size.IsSewnOtherwise);
        Assert.True(label.IsLabelAlone);
    }

    [Fact]
    public void MissingExtraAndChangedFilesAreNamed()
    {
        var disk = Disk(Set);
        disk.Remove("small/part-B.csv");
        disk["small/part-A.csv"] = Encoding.UTF8.GetBytes("step");
        disk["small/part-C.dst"] = new byte[3];
        disk["small/notes of the person.txt"] = new byte[3];
        disk["small/SHA256SUMS"] = Encoding.UTF8.GetBytes(
            Encoding.UTF8.GetString(disk["small/SHA256SUMS"])
                + $"{new string('0', 64)}  part-C.dst\n{new string('0', 64)}  ../secret\n{new string('0', 64)}  part-D.dst\n"
        );
        Assert.Equal(
            [
                "small/part-A.csv differs",
                "small/part-B.csv is missing",
                "small/SHA256SUMS differs",
                "small/part-C.dst is not made any more",
            ],
            DifferenceText.Of(Check(Set, disk))
        );
    }

    [Fact]
    public void AShapeThatMovedIsToldWithTheDistance()
    {
        var now = With(1, 2, 0, block => Shifted(block, 300, -400));
        Assert.Contains("hoop small, part B: sea moved by up to 0.5 mm", DifferenceText.Of(Check(now, Disk(Set))));
        var part = Check(now, Disk(Set)).Parts.Single();
        Assert.Equal(("B", 17, 17), (part.Letter, part.StitchesBefore, part.StitchesAfter));
        Assert.Equal(new ShapeDifference("sea", 0.5, 4, 4), part.Shapes.Single());
    }

    [Fact]
    public void OneStitchThatMovedIsFoundAmongTheOthers()
    {
        var now = With(
            0,
            1,
            0,
            b => b with { Stitches = b.Stitches.SetItem(2, new(new(13_000, 29_200), StitchUse.Fill)) }
        );
        var shape = Check(now, Disk(Set)).Parts.Single().Shapes.Single();
        Assert.Equal(("sea", 1.2), (shape.Shape, shape.MovedMm));
    }

    [Fact]
    public void StitchesMoreAndFewerAreCounted()
    {
        var more = With(0, 2, 0, b => b with { Stitches = b.Stitches.Add(new(new(17_500, 20_000), StitchUse.Run)) });
        Assert.Contains(
            "hoop small, part A: line moved by up to 2.5 mm; 1 stitch more",
            DifferenceText.Of(Check(more, Disk(Set)))
        );
        Assert.Contains(
            "hoop small, part A: line moved by up to 2.5 mm; 1 stitch fewer",
            DifferenceText.Of(Check(Set, Disk(more)))
        );
    }

    [Fact]
    public void WhatIsNewAndWhatIsGoneIsTold()
    {
        var body = Set.Parts[1].Steps[2];
        var gull = HandMade.Block("gull", StitchUse.Run, (85, 15), (87, 14), (89, 15));
        var more = Made(
            Set.Parts.SetItem(
                1,
                Set.Parts[1] with
                {
                    Steps = Set.Parts[1].Steps.SetItem(2, body with { Moves = body.Moves.Add(new(gull, true)) }),
                }
            )
        );
        Assert.Contains("hoop small, part B: gull is new, 3 stitches", DifferenceText.Of(Check(more, Disk(Set))));
        Assert.Contains(
            "hoop small, part B: 3 stitches of step 3 (deep water) around x 87, y 15 mm are not sewn any more",
            DifferenceText.Of(Check(Set, Disk(more)))
        );
    }

    /// <summary>The cloth's stitches stay where they are when the hoop is laid elsewhere.</summary>
    [Fact]
    public void AHoopThatMovedIsToldApartFromShapesThatMoved()
    {
        var hooping = HandMade.Plan.Hoopings[1] with { Field = HandMade.Field(72, 40, Turn.None) };
        var plan = HandMade.Plan with { Hoopings = HandMade.Plan.Hoopings.SetItem(1, hooping) };
        var parts = Set.Parts.SetItem(1, Set.Parts[1] with { Hooping = hooping });
        var now = new PartSet(plan, parts, OutputRenderer.Render(HandMade.Request, HandMade.Job, plan, parts, []));
        var part = Check(now, Disk(Set)).Parts.Single();
        Assert.Equal((2.0, 180, 0), (part.FieldMovedMm, part.TurnBefore, part.TurnAfter));
        Assert.Contains(
            "hoop small, part B: the hoop is not turned now; before it was turned by 180 degrees",
            DifferenceText.Of(Check(now, Disk(Set)))
        );
        Assert.Empty(part.Shapes);
    }

    /// <summary>The tapes stay as they are made by hand, so that the manifest alone tells it.</summary>
    [Fact]
    public void ACornerThatMovedIsToldAndIsMoreThanPaper()
    {
        var corner = HandMade.Plan.Corners[0];
        var moved = corner with { At = corner.At + new Point(300, -400), Id = "A1" };
        var plan = HandMade.Plan with { Corners = [moved, HandMade.Plan.Corners[1] with { Id = "A3" }] };
        var job = HandMade.Job with
        {
            Recipe = HandMade.Recipe with
            {
                Output = HandMade.Recipe.Output with { Files = [OutputKind.Tape, OutputKind.Csv] },
            },
        };
        var now = new PartSet(plan, Set.Parts, OutputRenderer.Render(HandMade.Request, job, plan, Set.Parts, []));
        var found = Check(now, Disk(Set));
        Assert.Equal(DifferenceWeight.Work, found.Weight);
        Assert.Equal(
            [new("A1", 0.5, false), new("A2", null, false), new("A3", null, true)],
            found.Parts[0].Corners.AsEnumerable()
        );
        Assert.Equal(
            [
                "every tape sews the same, but not what the person does at the machine",
                "why: not by the recipe or the files it names: they are those that the set was made of",
                "parts: changed A B",
            ],
            DifferenceText.SummaryOf(found).AsEnumerable()
        );
        // Once, however many parts have it.
        Assert.Contains("hoop small, corner A1 (parts A B) moved by 0.5 mm", DifferenceText.Of(found));
        Assert.Contains("hoop small, corner A2 (parts A B) is not sewn any more", DifferenceText.Of(found));
        Assert.Single(DifferenceText.Of(found), line => line.Contains("corner A2", StringComparison.Ordinal));
    }

    [Fact]
    public void ASummaryTellsStitchesAddedAndRemovedAndTheTotals()
    {
        var found = Check(With(1, 2, 0, block => Shifted(block, 300, -400)), Disk(Set));
        Assert.Equal(DifferenceWeight.Stitches, found.Weight);
        Assert.Equal(
            [
                "what is sewn differs",
                "why: not by the recipe or the files it names: they are those that the set was made of",
                "parts: changed B",
                "in changed parts: 4 needle holes are new, 4 are gone",
            ],
            DifferenceText.SummaryOf(found).Take(4)
        );
        var fewer = With(1, 2, 0, block => block with { Stitches = block.Stitches[..2] });
        Assert.Matches(
            @"(?m)^in all: stitches \d+ to \d+ \(-2\)",
            string.Join('\n', DifferenceText.SummaryOf(Check(fewer, Disk(Set))))
        );
    }

    [Fact]
    public void APictureShowsWhatOnlyOneSideHas()
    {
        var old = SetSide.OnDisk("small", Disk(Set).GetValueOrDefault);
        var now = SetSide.Of(With(1, 2, 0, block => Shifted(block, 300, -400)));
        var picture = DifferencePicture.Of("B", old, now)!;
        var texts = picture.Items.OfType<PaintedText>().Select(t => t.Text).ToList();
        // The very figures of the text.
        Assert.Contains(
            "hoop small, part B: 4 needle holes are new, 4 are gone",
            DifferenceText.Of(Checker.Compare(old, now))
        );
        Assert.Contains("needle holes only before: 4", texts);
        Assert.Contains("needle holes only after: 4", texts);
        Assert.Contains("needle holes in both: 13", texts);
        // In thread's colours on both sides, and a ring at the change in each of the three.
        var threads = picture.Items.OfType<PaintedThread>().Select(t => t.Colour).ToList();
        Assert.Equal(2, threads.Count(colour => colour == Colour.Of(HandMade.Blue.Color)));
        Assert.Contains("a change of a few stitches", texts);
    }

    [Fact]
    public void FewStitchesThatChangedFarFromOthersAreRinged()
    {
        var moved = new SewnStitch(new(10_000, 10_000), new(13_000, 10_000));
        var beside = new SewnStitch(new(14_000, 11_000), new(16_000, 12_000));
        var far = new SewnStitch(new(-40_000, 80_000), new(-41_000, 80_000));
        var spots = ChangedSpots.Of([moved, far, beside]);
        Assert.Equal(2, spots.Length);
        foreach (var stitch in (SewnStitch[])[moved, beside, far])
        foreach (var end in (Point[])[stitch.From, stitch.To])
            Assert.Single(spots, spot => end.DistanceTo(spot.Centre) < spot.Radius - 2000);
        // One line of stitches, however it slants, is one change, and a long one is seen without a ring.
        var slanting = Enumerable
            .Range(0, 30)
            .Select(i => new SewnStitch(new(1000 * i, 700 * i), new(1000 * (i + 1), 700 * (i + 1))));
        Assert.Empty(ChangedSpots.Of(slanting));
        Assert.Single(ChangedSpots.Of(slanting.Take(10)));
    }

    [Fact]
    public void AnotherThreadIsTold()
    {
        var steps = Set.Parts[0].Steps;
        var now = Made(
            Set.Parts.SetItem(
                0,
                Set.Parts[0] with
                {
                    Steps = steps.SetItem(2, steps[2] with { Thread = new("moss", "#336633") }),
                }
            )
        );
        Assert.Contains(
            "hoop small, part A: step 3 is sewn with moss, not brick",
            DifferenceText.Of(Check(now, Disk(Set)))
        );
    }

    /// <summary>Those after it are the steps they were, with another number.</summary>
    [Fact]
    public void AStepThatIsPutInChangesNoOther()
    {
        var part = Set.Parts[0];
        Step moss = new(
            2,
            StepKind.Body,
            new("moss", "#336633"),
            [new(Moss, false)],
            ["Change to thread: deep water."]
        );
        ImmutableArray<Step> steps = [part.Steps[0], moss, .. part.Steps[1..]];
        var more = Made(
            Set.Parts.SetItem(0, part with { Steps = [.. steps.Select((s, i) => s with { Number = i + 1 })] })
        );
        Assert.Equal(
            [
                "hoop small, part A: 3 needle holes are new, 0 are gone",
                "hoop small, part A: it has 5 steps, not 4",
                "hoop small, part A: step 2 (moss) is new",
                "hoop small, part A: bank is new, 3 stitches",
            ],
            DifferenceText.AtTheMachine(Check(more, Disk(Set))).Select(line => line.Text)
        );
        Assert.Contains("hoop small, part A: step 2 (moss) is gone", DifferenceText.Of(Check(Set, Disk(more))));
        Assert.Empty(Check(Set, Disk(more)).Parts.Single().OtherStops);
    }

    private static readonly Block Moss = HandMade.Block("bank", StitchUse.Run, (20, 12), (22, 11), (24, 12));

    [Fact]
    public void WhatThePersonDoesIsToldInItsWords()
    {
        var steps = Set.Parts[0].Steps;
        var now = Made(
            Set.Parts.SetItem(
                0,
                Set.Parts[0] with
                {
                    Steps = steps.SetItem(1, steps[1] with { Actions = ["Smooth the cloth."] }),
                }
            )
        );
        var stop = Assert.Single(Check(now, Disk(Set)).Parts.Single().OtherStops);
        Assert.Equal((2, "Smooth the cloth."), (stop.Step, stop.After));
        Assert.Contains(
            $"hoop small, part A: after step 2: 'Smooth the cloth'; before: '{stop.Before!.TrimEnd('.')}'",
            DifferenceText.Of(Check(now, Disk(Set)))
        );
    }

    [Fact]
    public void OfTwoStopsOnlySentencesThatDifferAreTold()
    {
        const string Look = "Look at each cross.";
        Assert.Equal(
            [": 'Take out A3'; before: 'Take out A2'", ": 'Take out A3' as well", ": no more 'Take out A2'"],
            [
                Told([Look, "Take out A2."], [Look, "Take out A3."]),
                Told([Look], [Look, "Take out A3."]),
                Told([Look, "Take out A2."], [Look]),
            ]
        );

        static string Told(ImmutableArray<string> was, ImmutableArray<string> now) =>
            Assert
                .Single(
                    DifferenceText.AtTheMachine(Check(With(now), Disk(With(was)))),
                    line => line.Text.Contains("after step", StringComparison.Ordinal)
                )
                .Text["hoop small, part A: after step 2".Length..];

        static PartSet With(ImmutableArray<string> actions)
        {
            var (part, steps) = (Set.Parts[0], Set.Parts[0].Steps);
            return Made(
                Set.Parts.SetItem(0, part with { Steps = steps.SetItem(1, steps[1] with { Actions = actions }) })
            );
        }
    }

    [Fact]
    public void TheNearestOfManyPointsIsTheNearest()
    {
        var point = from x in Gen.Int[-100, 100] from y in Gen.Int[-100, 100] select new Point(x, y);
        (from points in point.Array[1, 60] from asked in point select (points, asked)).Holds(s =>
            new NearestPoint(s.points.Select(p => (p, ""))).To(s.asked).Distance
            == s.points.Min(p => p.DistanceTo(s.asked))
        );
    }
}
