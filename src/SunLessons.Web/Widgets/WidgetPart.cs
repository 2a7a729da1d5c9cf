using Microsoft.AspNetCore.Components;
using SunLessons.Web.Languages;

namespace SunLessons.Web.Widgets;

/// <summary>What every drawn control shares: its model, and drawing again when the model changed.</summary>
public abstract class WidgetPart : WordedPart, IDisposable
{
    private WidgetModel? _watched;

    /// <summary>The control's model.</summary>
    [Parameter, EditorRequired]
    public WidgetModel Model { get; set; } = null!;

    /// <summary>All controls, for those that hold others.</summary>
    [CascadingParameter]
    public WidgetStore Store { get; set; } = null!;

    /// <summary>Identifier of the control's element, for its label.</summary>
    protected string ElementId => "control-" + Model.Id;

    /// <summary>The label as it is shown.</summary>
    protected string Description => Model.Text("description");

    /// <summary>The label as it is read aloud: fuller where the shown one leans on what stands above it.</summary>
    protected string SpokenLabel => Model.Text("_sunlessons_label") is { Length: > 0 } label ? label : Description;

    /// <summary>Whether the control is locked.</summary>
    protected bool Disabled => Model.Flag("disabled");

    /// <inheritdoc/>
    protected override void OnParametersSet()
    {
        if (!ReferenceEquals(_watched, Model))
        {
            Unwatch();
            _watched = Model;
            Model.Changed += OnModelChanged;
            OnModelSet();
        }
    }

    /// <summary>Called when another model is shown.</summary>
    protected virtual void OnModelSet()
    {
    }

    /// <summary>Called on the page's own thread after the model changed.</summary>
    protected virtual void OnModelRefreshed()
    {
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Unwatch();
        Dispose(true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Lets a control give back what it holds.</summary>
    protected virtual void Dispose(bool disposing)
    {
    }

    private void OnModelChanged() => _ = InvokeAsync(() =>
    {
        OnModelRefreshed();
        StateHasChanged();
    });

    private void Unwatch()
    {
        if (_watched is not null)
        {
            _watched.Changed -= OnModelChanged;
        }
    }
}
