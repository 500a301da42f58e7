using System.Xml;
using System.Xml.Linq;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;
using RehabTrack.Reports.Pictures;

namespace RehabTrack.Web.Components.Pictures;

/// <summary>
/// A picture as part of the page: its elements are written one by one, so that a part can be pressed by pointer, Enter or Space, and keeps
/// the keyboard's place when the picture is drawn anew.
/// </summary>
public sealed class SvgView : ComponentBase, IAsyncDisposable
{
    private ElementReference _frame;
    private IJSObjectReference? _module;

    [Parameter, EditorRequired]
    public Picture Picture { get; set; } = default!;

    /// <summary>Classes of the frame around the drawing.</summary>
    [Parameter]
    public string? Class { get; set; }

    /// <summary>Says which part was pressed.</summary>
    [Parameter]
    public EventCallback<PicturePart> Pressed { get; set; }

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    public async ValueTask DisposeAsync()
    {
        if (_module is null)
        {
            return;
        }

        try
        {
            await _module.DisposeAsync();
        }
        catch (JSDisconnectedException)
        {
            // The browser is gone, and its script with it.
        }
    }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "div");
        builder.AddAttribute(1, "class", string.Join(' ', "picture", Class).TrimEnd());
        builder.AddElementReferenceCapture(2, frame => _frame = frame);
        Write(builder, Picture.Root);
        builder.CloseElement();
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender || !Pressed.HasDelegate)
        {
            return;
        }

        try
        {
            _module = await Script.InvokeAsync<IJSObjectReference>("import", "./pictures.js");
            await _module.InvokeVoidAsync("keepStill", _frame);
        }
        catch (JSDisconnectedException)
        {
            // The page was left before its script came.
        }
    }

    private void Write(RenderTreeBuilder builder, XElement element)
    {
        builder.OpenRegion(3);
        builder.OpenElement(0, element.Name.LocalName);
        foreach (XAttribute attribute in element.Attributes().Where(attribute => !attribute.IsNamespaceDeclaration))
        {
            builder.AddAttribute(1, attribute.Name.LocalName, attribute.Value);
        }

        if (Pressed.HasDelegate && element.Attribute("data-examination") is { } examination && element.Attribute("tabindex") is not null)
        {
            PicturePart part = new(examination.Value, element.Attribute("data-track")?.Value);
            builder.AddAttribute(2, "onclick", EventCallback.Factory.Create<MouseEventArgs>(this, () => Pressed.InvokeAsync(part)));
            builder.AddAttribute(
                4,
                "onkeydown",
                EventCallback.Factory.Create<KeyboardEventArgs>(
                    this,
                    pressed => pressed is { Key: "Enter" or " ", Repeat: false } ? Pressed.InvokeAsync(part) : Task.CompletedTask
                )
            );
        }

        foreach (XNode node in element.Nodes())
        {
            if (node is XElement child)
            {
                Write(builder, child);
            }
            else if (node is XText { NodeType: XmlNodeType.Text } text)
            {
                builder.AddContent(5, text.Value);
            }
        }

        builder.CloseElement();
        builder.CloseRegion();
    }
}
