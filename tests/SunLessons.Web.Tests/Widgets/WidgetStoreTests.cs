using System.Text.Json.Nodes;
using SunLessons.Web.Widgets;

namespace SunLessons.Web.Tests.Widgets;

public sealed class WidgetStoreTests
{
    private readonly WidgetStore _store = new();
    private readonly List<(string Id, string Message)> _sent = [];

    public WidgetStoreTests()
    {
        _store.Outgoing += (id, message) => _sent.Add((id, message.ToJsonString()));
        _store.Open("a1", Parse("""{"state":{"_model_name":"FloatSliderModel","value":1.5,"min":-10,"max":10,"step":0.5,"description":"Longitude","disabled":true}}"""));
    }

    [Fact]
    public void An_opened_control_is_found_by_its_name_and_by_a_reference()
    {
        var model = _store.Find("IPY_MODEL_a1");
        Assert.Same(_store.Find("a1"), model);
        Assert.Equal(("FloatSliderModel", 1.5, true), (model!.Name, model.Number("value"), model.Flag("disabled")));
        Assert.Null(_store.Find("b2"));
    }

    [Fact]
    public void What_the_learner_does_shows_at_once_and_is_sent()
    {
        var model = _store.Find("a1")!;
        var told = 0;
        model.Changed += () => told++;
        model.Set(new JsonObject { ["value"] = 2.0 });
        Assert.Equal((2.0, 1), (model.Number("value"), told));
        var (id, message) = Assert.Single(_sent);
        Assert.Equal("a1", id);
        Assert.Equal("""{"method":"update","state":{"value":2},"buffer_paths":[]}""", message);
    }

    [Fact]
    public void A_whole_number_that_the_learner_chose_reads_as_any_number()
    {
        var model = _store.Find("a1")!;
        model.Set(new JsonObject { ["index"] = 3, ["value"] = 7 });
        Assert.Equal((3, 7.0), (model.Index("index"), model.Number("value")));
    }

    [Fact]
    public void An_update_of_the_kernel_is_taken_and_an_echo_is_not()
    {
        var model = _store.Find("a1")!;
        model.Set(new JsonObject { ["value"] = 3.0 });
        _store.Receive("a1", Parse("""{"method":"echo_update","state":{"value":2.0}}"""));
        Assert.Equal(3.0, model.Number("value"));
        _store.Receive("a1", Parse("""{"method":"update","state":{"disabled":false}}"""));
        Assert.False(model.Flag("disabled"));
        Assert.Single(_sent);
    }

    [Fact]
    public void A_click_is_a_custom_message_and_leaves_the_state_alone()
    {
        var before = _store.Find("a1")!.Snapshot().ToJsonString();
        _store.Find("a1")!.SendCustom(new JsonObject { ["event"] = "click" });
        Assert.Equal(("a1", """{"method":"custom","content":{"event":"click"}}"""), Assert.Single(_sent));
        Assert.Equal(before, _store.Find("a1")!.Snapshot().ToJsonString());
    }

    [Fact]
    public void A_custom_message_of_the_kernel_arrives()
    {
        var heard = new List<string>();
        _store.Find("a1")!.CustomArrived += content => heard.Add(content.ToJsonString());
        _store.Receive("a1", Parse("""{"method":"custom","content":{"columns":{"y":[1]}}}"""));
        _store.Receive("unknown", Parse("""{"method":"custom","content":{}}"""));
        Assert.Equal(["""{"columns":{"y":[1]}}"""], heard);
    }

    [Fact]
    public void A_closed_control_is_gone()
    {
        _store.Close("a1");
        Assert.Null(_store.Find("a1"));
    }

    private static JsonObject Parse(string json) => (JsonObject)JsonNode.Parse(json)!;
}
