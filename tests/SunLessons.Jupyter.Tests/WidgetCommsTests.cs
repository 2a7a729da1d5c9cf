using System.Text.Json.Nodes;
using SunLessons.Jupyter.Messages;
using SunLessons.Jupyter.Server;
using SunLessons.Jupyter.Widgets;

namespace SunLessons.Jupyter.Tests;

/// <summary>Widgets as the widget messaging protocol 2.1 and the model specification of controls 2.0.0 want them.</summary>
public sealed class WidgetCommsTests : IDisposable
{
    private readonly MemoryTransport _transport = new("k");
    private readonly KernelServer _server;
    private readonly WidgetComms _widgets;

    public WidgetCommsTests()
    {
        _server = new KernelServer(_transport, "k", _ => { });
        _widgets = new WidgetComms(new KernelComms(_server));
        _server.Start();
    }

    public void Dispose() => _server.Dispose();

    [Fact]
    public void A_slider_opens_with_its_layout_and_style_before_it()
    {
        var slider = _widgets.Open("FloatSliderModel", new JsonObject { ["value"] = 51.5 });
        var opened = _transport.Caused("").Where(c => c.Message.Type == "comm_open").Select(c => c.Message).ToArray();
        var states = opened.Select(m => m.Content.Object("data").Object("state")).ToArray();
        Assert.Equal(["LayoutModel", "SliderStyleModel", "FloatSliderModel"], states.Select(s => s.Text("_model_name")));
        Assert.All(opened, m => Assert.Equal("2.1.0", m.Metadata.Text("version")));
        Assert.All(opened, m => Assert.Equal("jupyter.widget", m.Content.Text("target_name")));
        Assert.All(states, s => Assert.Equal("2.0.0", s.Text("_model_module_version")));
        Assert.Equal("@jupyter-widgets/controls", states[2].Text("_model_module"));
        Assert.Equal("FloatSliderView", states[2].Text("_view_name"));
        Assert.Equal("IPY_MODEL_" + opened[0].Content.Text("comm_id"), states[2].Text("layout"));
        Assert.Equal("IPY_MODEL_" + opened[1].Content.Text("comm_id"), states[2].Text("style"));
        Assert.Equal(51.5, (double)states[2]["value"]!);
        // Beside a description of several words a slider of the usual width has no track.
        Assert.Equal(("100%", "48em"), (states[0].Text("width"), states[0].Text("max_width")));
        Assert.False(states[1].ContainsKey("layout"));
        Assert.Equal(slider.Id, opened[2].Content.Text("comm_id"));
    }

    [Fact]
    public void Layout_and_style_are_shared_unless_a_widget_brings_its_own()
    {
        _widgets.Open("CheckboxModel", []);
        _widgets.Open("CheckboxModel", []);
        _widgets.Open("CheckboxModel", new JsonObject { ["layout"] = new JsonObject { ["width"] = "50%" } });
        var names = _transport.Caused("").Where(c => c.Message.Type == "comm_open")
            .Select(c => c.Message.Content.Object("data").Object("state").Text("_model_name"));
        Assert.Equal(["LayoutModel", "CheckboxStyleModel", "CheckboxModel", "CheckboxModel", "LayoutModel", "CheckboxModel"], names);
    }

    [Fact]
    public async Task A_change_from_the_page_is_echoed_first_and_then_handed_on()
    {
        var slider = _widgets.Open("FloatSliderModel", new JsonObject { ["value"] = 1.0 });
        slider.Changed += changed => slider.Update(new JsonObject { ["description"] = "now " + changed["value"]!.ToJsonString() });
        var caused = await _transport.ServedAsync(Send(slider, new JsonObject { ["method"] = "update", ["state"] = new JsonObject { ["value"] = 55 }, ["buffer_paths"] = new JsonArray() }));
        var data = caused.Where(c => c.Message.Type == "comm_msg").Select(c => c.Message.Content.Object("data")).ToArray();
        Assert.Equal(["echo_update", "update"], data.Select(d => d.Text("method")));
        Assert.Equal(55, (int)data[0].Object("state")["value"]!);
        Assert.Equal("now 55", data[1].Object("state").Text("description"));
        Assert.All(data, d => Assert.IsType<JsonArray>(d["buffer_paths"]));
        Assert.Equal(55, (int)slider.State["value"]!);
    }

    [Fact]
    public async Task A_page_that_asks_gets_the_whole_state()
    {
        var text = _widgets.Open("HTMLModel", new JsonObject { ["value"] = "old" });
        text.Update(new JsonObject { ["value"] = "new" });
        var caused = await _transport.ServedAsync(Send(text, new JsonObject { ["method"] = "request_state" }));
        var state = caused.Single(c => c.Message.Type == "comm_msg").Message.Content.Object("data").Object("state");
        Assert.Equal("new", state.Text("value"));
        Assert.Equal("HTMLModel", state.Text("_model_name"));
    }

    [Fact]
    public async Task A_custom_message_reaches_the_widget()
    {
        var button = _widgets.Open("ButtonModel", []);
        var got = "";
        button.CustomReceived += content => got = content.Text("event");
        await _transport.ServedAsync(Send(button, new JsonObject { ["method"] = "custom", ["content"] = new JsonObject { ["event"] = "click" } }));
        Assert.Equal("click", got);
    }

    private string Send(Widget widget, JsonObject data) =>
        _transport.Receive(KernelChannel.Shell, "comm_msg", new JsonObject { ["comm_id"] = widget.Id, ["data"] = data });
}
