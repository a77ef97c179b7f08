using System.Text;
using Splitter.Artwork.Tapes;
using Splitter.Diagnostics;
using Splitter.Recipes;
using Splitter.Recipes.Keys;
using Splitter.Starting;

namespace Splitter.Tests.Artwork.Tapes;

/// <summary>What is said of tapes whose threads or size cannot be, and what is proposed instead.</summary>
public sealed class TapeThreadTests
{
    private static HandTape Blocks(int count)
    {
        var tape = new HandTape().Sew((0, 0));
        for (var i = 1; i < count; i++)
            tape.Stop().Sew((i % 12, i / 12));
        return tape;
    }

    private static Result<string> Started(HandTape tape) =>
        StarterRecipe.Write("started", new("hand.dst", tape.Bytes), null);

    [Fact]
    public void MoreBlocksThanARecipeHasThreadsAreRefused()
    {
        var tape = Blocks(RecipeKeys.MostThreads + 1);
        const string Says =
            "hand.dst: error SPL2208: the tape has 501 colour blocks, and Splitter takes up to 500; "
            + "divide the design, or take stops out";
        Assert.Equal(Says, Assert.Single(HandTape.Make(tape.Bytes, 1, 70, 70).Diagnostics).ToString());
        Assert.Equal(Says, Assert.Single(Started(tape).Diagnostics).ToString());
        Assert.Equal("SPL2208", HandTape.Make(Blocks(1_100).Bytes, 1, 70, 70).Diagnostics[^1].Code);
    }

    [Fact]
    public void AsManyBlocksAsARecipeHasThreadsGetAThreadEach()
    {
        var started = Started(Blocks(RecipeKeys.MostThreads));
        var recipe = RecipeReader.Read("started.yaml", Encoding.UTF8.GetBytes(started.Value)).Value;
        Assert.Equal(RecipeKeys.MostThreads, recipe.Threads.Length);
        Assert.Equal(RecipeKeys.MostThreads, recipe.Threads.Select(t => t.Color).Distinct().Count());
    }

    /// <summary>Of as many as designs have, none looks like another; a difference of 2 is just seen.</summary>
    [Theory]
    [InlineData(12, 15)]
    [InlineData(34, 9)]
    [InlineData(100, 5.5)]
    public void ProposedColoursCanBeToldApart(int blocks, double apart)
    {
        var colours = BlockThreads
            .Proposed([new("sea", "#2b5f8a")], blocks)
            .Select(t => DistinctColours.Seen.Of(t.Color))
            .ToList();
        var least = colours.SelectMany((c, i) => colours.Skip(i + 1).Select(o => Math.Sqrt(c.SquareTo(o)))).Min();
        Assert.InRange(least, apart, 200);
    }

    [Fact]
    public void WhiteIsLightAndGreyHasNoHue()
    {
        var (white, black) = (DistinctColours.Seen.Of("#ffffff"), DistinctColours.Seen.Of("#000000"));
        Assert.Equal((100, 0, 0), (Math.Round(white.L), Math.Round(white.A, 2), Math.Round(white.B, 2)));
        Assert.Equal(0, Math.Round(black.L, 2));
        Assert.Equal(0, Math.Round(DistinctColours.Seen.Of("#808080").A, 2));
    }

    [Fact]
    public void ProposedNamesAreNotTaken() =>
        Assert.Equal(
            ["Block 2", "block 3", "block 4"],
            BlockThreads.Proposed([new("Block 2", "#112233")], 3).Select(t => t.Name)
        );

    /// <summary>The first part ends with corners for the second, which begins with them.</summary>
    [Fact]
    public void APartOfASplitWorkIsToldFromADesign()
    {
        var design = new HandTape().Rows(0, 0, 100, 40).Bytes;
        var set = HandTape.Make(design, 1, 70, 70);
        Assert.DoesNotContain(set.Diagnostics, IsPart);
        Assert.Equal(2, set.Value.Sets.Single().Parts.Length);
        foreach (
            var part in set.Value.Sets.Single().Files.Where(f => f.Path.EndsWith(".dst", StringComparison.Ordinal))
        )
        {
            var told = Assert.Single(
                TapeDrawing.ReadSheet(new("part.dst", part.Bytes), null, default).Diagnostics,
                IsPart
            );
            Assert.Contains("sews 3 corners and nothing else", told.Message, StringComparison.Ordinal);
        }

        static bool IsPart(Diagnostic diagnostic) => diagnostic.Code == "SPL2209";
    }

    /// <summary>An upright line has no width, and a narrow tape less than a recipe may ask for.</summary>
    [Theory]
    [InlineData(0, "leave the width out")]
    [InlineData(4, "leave the width out")]
    [InlineData(5, "write a width from 5 to 5.5 mm")]
    [InlineData(50, "write a width from 45 to 55 mm")]
    public void AWidthThatIsProposedMayBeAsked(int own, string says)
    {
        var tape = new HandTape().Sew((0, 0)).Run(own, 0).Run(own, 30);
        var told = Assert.Single(HandTape.Make(tape.Bytes, 1, 70, 70, artwork: ", width: 60 mm").Diagnostics);
        Assert.Equal("SPL2204", told.Code);
        Assert.Contains(says, told.Message, StringComparison.Ordinal);
    }

    /// <summary>A record of the tape says nothing to a person; the rule does.</summary>
    [Fact]
    public void WhatCannotBeKeptWholeIsToldAtTheRule()
    {
        var made = HandTape.Make(
            new HandTape().Sew((0, 0)).Run(120, 0).Bytes,
            1,
            70,
            70,
            artwork: ", sew: [{ match: { class: run }, keep-whole: true }]"
        );
        var told = Assert.Single(made.Diagnostics, d => d.Code == "SPL3003");
        Assert.StartsWith("recipe.yaml(2,", told.ToString(), StringComparison.Ordinal);
    }
}
