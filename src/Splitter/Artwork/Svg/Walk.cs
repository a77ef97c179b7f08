using System.Collections.Immutable;
using System.Xml.Linq;
using Splitter.Artwork.Svg.Css;
using Splitter.Artwork.Svg.Paths;
using Splitter.Diagnostics;
using Splitter.Geometry;

namespace Splitter.Artwork.Svg;

/// <summary>
/// Goes through the drawing in its order and hands each shape to a receiver with all that applies to it: groups,
/// copies, nested viewports, transforms, clip paths, styles.
/// </summary>
internal sealed class Walk
{
    private readonly Cascade cascade;
    private readonly Remarks remarks;
    private readonly LookReader looks;
    private readonly ShapeReader shapes;
    private readonly References references;
    private readonly ClipReader clips;

    internal Walk(Cascade cascade, References references, Remarks remarks)
    {
        this.cascade = cascade;
        this.references = references;
        this.remarks = remarks;
        looks = new(remarks);
        shapes = new(remarks);
        clips = new(this, cascade, references, remarks);
    }

    /// <summary>The outermost element; its viewport is the sheet, which does not clip.</summary>
    internal void VisitRoot(XElement root, Setting around, IReceiver receiver)
    {
        var own = cascade.Of(root);
        var look = looks.Read(root, own, around.Look, around.Diagonal);
        if (!look.Displayed || look.Opacity == 0)
            return;
        looks.Remark(root, own, look);
        Children(root, Enter(root, own, look, around), receiver);
    }

    /// <summary>An element with all that is in it.</summary>
    internal void Visit(XElement element, Setting around, IReceiver receiver)
    {
        if (remarks.Stopped || !SvgDocument.IsSvg(element) || !Conditions.Hold(element))
            return;
        var kind = ElementKinds.Of(element.Name.LocalName);
        if (kind == ElementKind.Silent)
            return;
        remarks.CountElement(element);
        if (around.Depth >= SvgLoader.MostDepth)
        {
            remarks.Add(element, (place, _) => ArtworkProblems.TooDeep(place, SvgLoader.MostDepth));
            return;
        }
        var own = cascade.Of(element);
        var look = looks.Read(element, own, around.Look, around.Diagonal);
        if (!look.Displayed || (receiver.Paints && look.Opacity == 0))
            return;
        if (kind == ElementKind.Reported)
        {
            if (look.Visible)
                remarks.Add(element, ElementKinds.Remark(element));
            return;
        }
        if (kind == ElementKind.Group && !receiver.Groups)
        {
            remarks.Add(element, ArtworkProblems.InClip);
            return;
        }
        if (receiver.Paints)
            looks.Remark(element, own, look);
        var setting = Enter(element, own, look, around);
        if (receiver.Clips && look.ClipPath is { } clip && clips.Read(element, clip, setting) is { } region)
            setting = setting with { Clip = Both(setting.Clip, region) };
        if (setting.Clip is not { IsEmpty: true })
            Content(element, setting, receiver);
    }

    /// <summary>What is in an element that has been entered already.</summary>
    internal void Content(XElement element, Setting setting, IReceiver receiver)
    {
        switch (element.Name.LocalName)
        {
            case "use":
                Copy(element, setting, receiver);
                break;
            case "svg":
                Nest(element, cascade.Of(element), setting, receiver, null);
                break;
            case "switch":
                if (element.Elements().FirstOrDefault(e => SvgDocument.IsSvg(e) && Conditions.Hold(e)) is { } first)
                    Visit(first, Inside(setting), receiver);
                break;
            case var name when ShapeReader.IsShape(name):
                foreach (var child in element.Elements().Where(e => ElementKinds.IsAnimation(e.Name.LocalName)))
                    remarks.Add(child, ArtworkProblems.Animation);
                receiver.Draw(element, shapes.Read(element, cascade.Of(element), setting.Viewport), setting);
                break;
            default:
                Children(element, setting, receiver);
                break;
        }
    }

    private Setting Enter(XElement element, Declarations own, Look look, Setting around)
    {
        var space = around.Space;
        if (own["transform"] is { Length: > 0 } text)
        {
            if (TransformReader.Read(text) is { } matrix)
                space *= matrix;
            else
                remarks.Add(element, (place, what) => ArtworkProblems.BadValue(place, what, "transform", text));
        }
        if (element.Name.LocalName == "use")
        {
            var length = new ElementLengths(element, own, around.Viewport, remarks);
            space *= Matrix.Shift(length.Across("x"), length.Down("y"));
        }
        return around with
        {
            Space = space,
            Look = look,
            Ids = (string?)element.Attribute("id") is { Length: > 0 } id ? around.Ids.Insert(0, id) : around.Ids,
            Classes = around.Classes.InsertRange(0, XmlWords.Of((string?)element.Attribute("class"))),
        };
    }

    private void Children(XElement element, Setting setting, IReceiver receiver)
    {
        var inside = Inside(setting);
        foreach (var child in element.Elements())
            Visit(child, inside, receiver);
    }

    private static Setting Inside(Setting setting) => setting with { Depth = setting.Depth + 1, User = null };

    private void Copy(XElement use, Setting setting, IReceiver receiver)
    {
        if (
            SvgDocument.Href(use) is not { Length: > 0 } reference
            || references.Follow(use, reference) is not { } target
        )
            return;
        var copying = setting.Copying;
        if (copying.Contains(target) || use.AncestorsAndSelf().Contains(target))
        {
            remarks.Add(use, (place, what) => ArtworkProblems.Circle(place, what, reference));
            return;
        }
        var inside = setting with { Depth = setting.Depth + 1, Copying = copying.Push(target), User = use };
        switch (target.Name.LocalName)
        {
            case "symbol" or "svg" when receiver.Groups:
                CopyViewport(use, target, inside, receiver);
                break;
            case "g" or "use" or "symbol" or "svg" when !receiver.Groups:
                remarks.Add(use, ArtworkProblems.InClip);
                break;
            case var name when ElementKinds.Of(name) == ElementKind.Silent:
                remarks.Add(use, (place, what) => ArtworkProblems.WrongKind(place, what, reference, name));
                break;
            default:
                Visit(target, inside, receiver);
                break;
        }
    }

    private void CopyViewport(XElement use, XElement target, Setting around, IReceiver receiver)
    {
        remarks.CountElement(target);
        var own = cascade.Of(target);
        var look = looks.Read(target, own, around.Look, around.Diagonal);
        if (around.Depth >= SvgLoader.MostDepth || !look.Displayed || (receiver.Paints && look.Opacity == 0))
            return;
        if (receiver.Paints)
            looks.Remark(target, own, look);
        var setting = Enter(target, own, look, around);
        if (receiver.Clips && look.ClipPath is { } clip && clips.Read(target, clip, setting) is { } region)
            setting = setting with { Clip = Both(setting.Clip, region) };
        Nest(target, own, setting, receiver, use);
    }

    /// <summary>A viewport inside the drawing: it places its content and, unless told otherwise, clips it.</summary>
    /// <param name="use">Whose width and height count before the viewport's own.</param>
    private void Nest(XElement element, Declarations own, Setting setting, IReceiver receiver, XElement? use)
    {
        var length = new ElementLengths(element, own, setting.Viewport, remarks);
        var given = use is null ? length : new ElementLengths(use, cascade.Of(use), setting.Viewport, remarks);
        var placed = element.Name.LocalName == "svg";
        var frame = new Frame(
            placed ? length.Across("x") : 0,
            placed ? length.Down("y") : 0,
            given.NotNegative("width", setting.Viewport.X)
                ?? length.NotNegative("width", setting.Viewport.X)
                ?? setting.Viewport.X,
            given.NotNegative("height", setting.Viewport.Y)
                ?? length.NotNegative("height", setting.Viewport.Y)
                ?? setting.Viewport.Y
        );
        if (!frame.HasArea || !TryViewBox(element, out var viewBox))
            return;
        if (!setting.Look.Overflows && receiver.Clips)
            setting = setting with { Clip = Both(setting.Clip, Ground(frame, setting.Space)) };
        if (setting.Clip is { IsEmpty: true })
            return;
        var inner = setting with
        {
            Space = setting.Space * Viewports.Place(frame, viewBox, (string?)element.Attribute("preserveAspectRatio")),
            Viewport = viewBox is { } box ? new(box.Width, box.Height) : new(frame.Width, frame.Height),
        };
        Children(element, inner, receiver);
    }

    /// <summary>False when the view box says that nothing is drawn.</summary>
    internal bool TryViewBox(XElement element, out Frame? viewBox)
    {
        viewBox = null;
        if ((string?)element.Attribute("viewBox") is not { } text)
            return true;
        viewBox = Viewports.ReadViewBox(text);
        if (viewBox is null)
            remarks.Add(element, (place, what) => ArtworkProblems.BadValue(place, what, "viewBox", text));
        else if (!viewBox.Value.HasArea)
        {
            remarks.Add(element, ArtworkProblems.EmptyViewBox);
            return false;
        }
        return true;
    }

    private static Region Ground(Frame frame, Matrix space)
    {
        var (right, bottom) = (frame.X + frame.Width, frame.Y + frame.Height);
        Spot[] corners = [new(frame.X, frame.Y), new(right, frame.Y), new(right, bottom), new(frame.X, bottom)];
        return Snapping.Ground([new([.. corners.Select(space.Apply)], Closed: true)], FillRule.NonZero);
    }

    internal static Region Both(Region? a, Region b) => a is null ? b : Polygons.Intersect(a, b);
}
