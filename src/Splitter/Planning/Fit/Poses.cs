using System.Runtime.Intrinsics;
using Splitter.Geometry;
using Splitter.Recipes;

namespace Splitter.Planning.Fit;

/// <summary>
/// How far each hooping lies from where it should: shift and turn, as linear functions of independent errors.
/// <para>
/// A hooping is set by its corners, each of them where its own donor has put it, and none of them exactly. The person
/// lays one piece of cloth over tacks on one stabilizer and cannot follow each tack by itself, so the hooping takes the
/// rigid move that fits them all best, in the sense of least squares, also where donors disagree. For small moves that
/// is linear in the places of the tacks. About the centroid of N corners its shift is their mean shift, with an error
/// of its own of accuracy²/N per axis, and its turn the mean moment, with accuracy²/sum r². With one donor that is the
/// published formula that <see cref="CornerFit"/> holds, and squares add up along a chain; with several, what hoopings
/// have in common is kept, for each remembers by how much every single error moves it.
/// </para>
/// <para>
/// Cloth gives in every hooping anew: by its strain times the way from the nearest corner that the hooping is set by,
/// since every corner is set over its own tack. Corners for later hoopings are sewn on the cloth as it lies then, and
/// take that along.
/// </para>
/// Hoopings are added in sewing order and taken away again from the end, as a search needs it.
/// </summary>
internal sealed class Poses
{
    /// <summary>Errors of its own that setting a hooping brings: two of shift and one of turn.</summary>
    internal const int OfSetting = 3;

    /// <summary>Errors of its own that its cloth brings: warp, weft and bias.</summary>
    private const int OfCloth = 3;

    /// <summary>
    /// Digits kept of the grain's sine and cosine: all else here is exact to the last bit on every machine, these alone
    /// may differ in theirs.
    /// </summary>
    private const int GrainDigits = 12;

    /// <summary>Places that misfits are summed at together.</summary>
    private static readonly int Lanes = Vector256<double>.Count;

    private readonly Point origin;
    private readonly Stretch stretch;
    private readonly double sin;
    private readonly double cos;

    /// <summary>Columns of one hooping: those of the cloth are left out where it does not give.</summary>
    private readonly int stride;

    private readonly Pose[] poses;

    /// <param name="origin">
    /// Shifts and turns are about this place: one that moves with the drawing, so that a drawing which is moved is
    /// planned alike to the last bit.
    /// </param>
    internal Poses(int capacity, double accuracy, Stretch stretch, Point origin)
    {
        this.origin = origin;
        Accuracy = accuracy;
        this.stretch = stretch;
        var (s, c) = Math.SinCos(stretch.WarpDirection * Math.PI / 180);
        (sin, cos) = (Math.Round(s, GrainDigits), Math.Round(c, GrainDigits));
        stride = stretch.IsNone ? OfSetting : OfSetting + OfCloth;
        poses = new Pose[capacity];
        for (var i = 0; i < capacity; i++)
            poses[i] = new(i, stride);
    }

    /// <summary>How closely a corner is set: one standard deviation per axis, µm.</summary>
    internal double Accuracy { get; }

    /// <summary>How many hoopings there are.</summary>
    internal int Count { get; private set; }

    /// <summary>Columns asked about, empty ones too: a measure of work that no clock has a part in.</summary>
    internal long Work { get; private set; }

    /// <summary>The first hooping defines where the work lies; it has no error.</summary>
    internal void AddFirst() => Count = 1;

    /// <summary>The next hooping, set by these corners; at least two, of hoopings that are there.</summary>
    internal void Add(ReadOnlySpan<TakenCorner> corners)
    {
        poses[Count].Corners = Placed(corners);
        Fit(Count, corners, Accuracy, followsCloth: false);
        Count++;
    }

    /// <summary>
    /// The last hooping, set by its corners already, is moved once more so that places which a person has looked at
    /// come to lie where their donors' do. Its cloth stays as the corners hold it: what it gives at these places is
    /// followed, too.
    /// </summary>
    /// <param name="accuracy">How closely an offset is read: one standard deviation per axis, µm.</param>
    internal void Correct(ReadOnlySpan<TakenCorner> measured, double accuracy) =>
        Fit(Count - 1, measured, accuracy, followsCloth: true);

    private Point[] Placed(ReadOnlySpan<TakenCorner> corners)
    {
        var at = new Point[corners.Length];
        for (var k = 0; k < at.Length; k++)
            at[k] = corners[k].At - origin;
        return at;
    }

    /// <summary>The rigid move of a hooping that fits places to those of their donors best.</summary>
    private void Fit(int hooping, ReadOnlySpan<TakenCorner> places, double accuracy, bool followsCloth)
    {
        var pose = poses[hooping];
        var at = Placed(places);
        var (x, y, spread) = CornerFit.Spread(at);
        (x, y) = (x + at[0].X, y + at[0].Y);
        pose.Clear();
        Span<int> firsts = stackalloc int[hooping + 1];
        for (var k = 0; k < at.Length; k++)
        {
            var (place, donorPlace) = (at[k], places[k].Donor);
            var donor = poses[donorPlace];
            var (share, rx, ry) = (1.0 / at.Length, (place.X - x) / spread, (place.Y - y) / spread);
            pose.Follow(donor);
            foreach (var first in donor.Moving(donor, firsts))
                for (var c = first; c < first + stride; c++)
                    Move(c, donor.X[c] - (donor.Turn[c] * place.Y), donor.Y[c] + (donor.Turn[c] * place.X));
            Work += donor.X.Length;
            for (var kind = OfSetting; kind < stride; kind++)
            {
                var (dx, dy) = Give(donor, place, kind - OfSetting);
                Move((donorPlace * stride) + kind, dx, dy);
                if (!followsCloth)
                    continue;
                (dx, dy) = Give(pose, place, kind - OfSetting);
                Move((hooping * stride) + kind, -dx, -dy);
            }

            void Move(int c, double dx, double dy)
            {
                pose.X[c] += share * dx;
                pose.Y[c] += share * dy;
                pose.Turn[c] += (rx * dy) - (ry * dx);
            }
        }
        var own = hooping * stride;
        pose.X[own] = pose.Y[own + 1] = accuracy / Math.Sqrt(at.Length);
        pose.Turn[own + 2] = accuracy / Math.Sqrt(spread);
        pose.FromCentroid(x, y);
    }

    /// <summary>Takes hoopings away from the end.</summary>
    internal void Keep(int count) => Count = Math.Min(Count, count);

    /// <summary>
    /// Mean squared misfit of two hoopings at a place, µm²: all that a search asks, and therefore quick.
    /// </summary>
    internal double Variance(int one, int other, Point at)
    {
        double found = 0;
        Variances(one, other, [at], new(ref found));
        return found;
    }

    /// <summary>The same at several places: as many at a time as the processor adds at once.</summary>
    internal void Variances(int one, int other, ReadOnlySpan<Point> places, Span<double> found)
    {
        found[..places.Length].Clear();
        if (one == other)
            return;
        var (late, early) = (poses[Math.Max(one, other)], poses[Math.Min(one, other)]);
        Span<double> x = stackalloc double[Lanes],
            y = stackalloc double[Lanes],
            sums = stackalloc double[Lanes];
        Span<int> firsts = stackalloc int[Math.Max(one, other) + 1];
        var moving = late.Moving(early, firsts);
        for (var first = 0; first < places.Length; first += Lanes)
        {
            var some = places[first..Math.Min(places.Length, first + Lanes)];
            for (var i = 0; i < some.Length; i++)
                (x[i], y[i]) = (some[i].X - origin.X, some[i].Y - origin.Y);
            Pose.SumOfSquares(late, early, stride, moving, Vector256.Create<double>(x), Vector256.Create<double>(y))
                .CopyTo(sums);
            sums[..some.Length].CopyTo(found[first..]);
        }
        Work += (long)places.Length * late.X.Length;
        for (var i = 0; i < places.Length && stride > OfSetting; i++)
            found[i] = WithCloth(found[i], late, early, Math.Min(one, other), places[i] - origin);
    }

    /// <summary>With what the cloth of both gives.</summary>
    private double WithCloth(double sum, Pose late, Pose early, int earlyPlace, Point at)
    {
        for (var cloth = 0; cloth < OfCloth; cloth++)
        {
            // The later one's own cloth moves nothing else; the earlier one's has moved the later one along already.
            var (x, y) = Give(late, at, cloth);
            sum += (x * x) + (y * y);
            var c = (earlyPlace * stride) + OfSetting + cloth;
            var (dx, dy) = (late.X[c] - (late.Turn[c] * at.Y), late.Y[c] + (late.Turn[c] * at.X));
            var (gx, gy) = Give(early, at, cloth);
            sum += (gx * (gx - (2 * dx))) + (gy * (gy - (2 * dy)));
        }
        return sum;
    }

    /// <summary>
    /// By how much one standard deviation of each error moves a place of a hooping; errors of later ones do not.
    /// </summary>
    internal Moves MovesAt(int hooping, Point at)
    {
        var pose = poses[hooping];
        at -= origin;
        var (x, y) = (new double[pose.X.Length], new double[pose.X.Length]);
        for (var c = 0; c < x.Length; c++)
            (x[c], y[c]) = (pose.X[c] - (pose.Turn[c] * at.Y), pose.Y[c] + (pose.Turn[c] * at.X));
        for (var kind = OfSetting; kind < stride; kind++)
        {
            var (gx, gy) = Give(pose, at, kind - OfSetting);
            var c = (hooping * stride) + kind;
            (x[c], y[c]) = (x[c] + gx, y[c] + gy);
        }
        return new(x, y, stride);
    }

    /// <summary>
    /// Where one standard deviation of a strain moves a place of a hooping's cloth; nowhere in the first, which defines
    /// where the work lies. Warp and weft give along themselves; shear of the weave by s lengthens the bias by s and
    /// moves a place at (a, b) along warp and weft by (s b, s a).
    /// </summary>
    private (double X, double Y) Give(Pose pose, Point at, int cloth)
    {
        if (pose.Corners.Length == 0)
            return default;
        var nearest = pose.Corners[0];
        foreach (var corner in pose.Corners)
        {
            var (d, least) = (corner.DistanceTo(at), nearest.DistanceTo(at));
            if (d < least || (d == least && corner.CompareTo(nearest) < 0))
                nearest = corner;
        }
        var (dx, dy) = (at.X - (double)nearest.X, at.Y - (double)nearest.Y);
        var (along, across) = ((dx * cos) + (dy * sin), (dy * cos) - (dx * sin));
        var (a, b) = cloth switch
        {
            0 => (stretch.Warp * along, 0),
            1 => (0, stretch.Weft * across),
            _ => (stretch.Bias * across, stretch.Bias * along),
        };
        return ((a * cos) - (b * sin), (a * sin) + (b * cos));
    }
}
