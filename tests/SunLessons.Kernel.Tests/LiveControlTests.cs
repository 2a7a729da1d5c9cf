using System.Text.Json.Nodes;
using SunLessons.Jupyter.Client;
using SunLessons.Jupyter.Messages;

namespace SunLessons.Kernel.Tests;

/// <summary>A lesson's controls through a real kernel, with this test in the place of the page.</summary>
public sealed class LiveControlTests(RunningKernel kernel) : IClassFixture<RunningKernel>
{
    [Fact]
    public async Task A_burst_of_moves_ends_in_the_newest_value_and_merges_what_lies_between()
    {
        var widgets = new Dictionary<string, ClientComm>();
        var told = new List<string>();
        var newest = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        kernel.Client.CommOpened += (comm, message) =>
        {
            var state = message.Data.Object("state");
            widgets[state.Text("_model_name")] = comm;
            if (state.Text("_model_name") != "HTMLModel")
            {
                return;
            }

            comm.Received += update =>
            {
                var value = update.Data.Object("state").Text("value");
                lock (told)
                {
                    told.Add(value);
                }

                if (value.Contains("now 200!", StringComparison.Ordinal))
                {
                    newest.TrySetResult();
                }
            };
        };
        var ran = await kernel.Client.RunAsync(
            """
            var moved = Number("moved", "Moved", 0, 1000, 1, 5);
            var computed = 0;
            Show(moved, LiveText("said", () => { computed++; System.Threading.Thread.Sleep(5); return $"now {moved.Value}!"; }, moved));
            """);
        Assert.Equal("ok", ran.Reply.Status);
        var view = Assert.IsType<DisplayOutput>(Assert.Single(ran.Outputs)).Data;
        Assert.NotEqual("", view.Object("application/vnd.jupyter.widget-view+json").Text("model_id"));
        Assert.NotEqual("", view.Text("text/plain"));

        for (var value = 1; value <= 200; value++)
        {
            widgets["FloatSliderModel"].Send(new JsonObject
            {
                ["method"] = "update",
                ["state"] = new JsonObject { ["value"] = value },
                ["buffer_paths"] = new JsonArray(),
            });
        }

        await newest.Task.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Contains("now 200!", told[^1]);
        // Each computing sleeps 5 ms: were all 200 computed, it would be 201 with the first.
        var computed = int.Parse((await kernel.Client.RunAsync("computed")).Result!, System.Globalization.CultureInfo.InvariantCulture);
        Assert.InRange(computed, 2, 190);
    }

    [Fact]
    public async Task What_a_control_sets_off_and_fails_is_told_below_it_until_it_works_again()
    {
        using var page = new WidgetPage(kernel.Client);
        var ran = await kernel.Client.RunAsync("var failing = Number(\"failing\", \"Failing\", 0, 10, 1, 5);\nfailing.Changed += () => { var part = 60 / ((int)failing.Value - 7); };\nShow(failing);");
        var root = ran.Outputs.OfType<DisplayOutput>().Single().Data.Object("application/vnd.jupyter.widget-view+json").Text("model_id");
        page.Move("FloatSliderModel", 7);
        var line = await page.WaitAsync(root, root => root.Texts("children") is [_, var added] ? added["IPY_MODEL_".Length..] : null);
        var cell = ran.Reply.ExecutionCount;
        Assert.Equal(
            $"<p role=\"alert\">DivideByZeroException: Attempted to divide by zero. at cell {cell}, line 2: failing.Changed += () =&gt; {{ var part = 60 / ((int)failing.Value - 7); }};</p>",
            await page.WaitAsync(line, state => state.Text("value") is { Length: > 0 } value ? value : null));
        page.Move("FloatSliderModel", 8);
        await page.WaitAsync(line, state => state.Text("value").Length == 0 ? "" : null);
    }

    [Theory]
    [InlineData("turning", "while (true) { }")]
    [InlineData("waiting", "new System.Threading.ManualResetEvent(false).WaitOne();")]
    public async Task What_a_control_sets_off_and_never_ends_is_stopped_and_the_next_cell_runs(string key, string code)
    {
        using var page = new WidgetPage(kernel.Client);
        var ran = await kernel.Client.RunAsync($"var endless = Number(\"{key}\", \"Endless\", 0, 10, 1, 5); var entered = 0;\nendless.Changed += () => {{ entered++; {code} }};\nShow(endless);");
        Assert.Equal("ok", ran.Reply.Status);
        page.Move("FloatSliderModel", 7);
        var next = kernel.Client.RunAsync("entered");
        await Task.Delay(500);
        Assert.False(next.IsCompleted);
        await kernel.Client.InterruptAsync();
        Assert.Equal("1", (await next).Result);
    }

    [Fact]
    public async Task What_a_page_says_of_the_place_reaches_cells_and_what_cells_record_reaches_the_page()
    {
        var recorded = new TaskCompletionSource<JsonObject>(TaskCreationOptions.RunContinuationsAsynchronously);
        var page = kernel.Client.OpenComm("sunlessons.page", new JsonObject
        {
            ["draws_figures"] = true,
            ["place"] = new JsonObject { ["name"] = "Dunedin", ["latitude_degrees"] = -45.87, ["longitude_degrees"] = 170.5, ["zone"] = "Pacific/Auckland" },
            ["record"] = new JsonObject { ["kept"] = 5 },
        });
        page.Received += message => recorded.TrySetResult(message.Data);
        Assert.Equal("Dunedin", (await kernel.Client.RunAsync("Here.Name")).Result);
        Assert.Equal("ok", (await kernel.Client.RunAsync("Lesson.Current.MoveTo(Gazetteer.Towns.First(t => t.Name == \"Darwin\"));")).Reply.Status);
        var record = (await recorded.Task.WaitAsync(TimeSpan.FromSeconds(10))).Object("record");
        Assert.Equal("place", record.Text("key"));
        Assert.Equal("Darwin", record.Object("value").Text("name"));
        page.Close();
    }

    /// <summary>The state of the widgets that cells open, as a page keeps it.</summary>
    private sealed class WidgetPage : IDisposable
    {
        private readonly KernelClient _client;
        private readonly Dictionary<string, JsonObject> _states = [];
        private readonly Dictionary<string, ClientComm> _latest = [];

        public WidgetPage(KernelClient client)
        {
            _client = client;
            client.CommOpened += Open;
        }

        public void Dispose() => _client.CommOpened -= Open;

        public void Move(string model, double value)
        {
            lock (_states)
            {
                _latest[model].Send(new JsonObject { ["method"] = "update", ["state"] = new JsonObject { ["value"] = value }, ["buffer_paths"] = new JsonArray() });
            }
        }

        /// <summary>Waits until a widget's state gives an answer.</summary>
        public async Task<string> WaitAsync(string id, Func<JsonObject, string?> answer)
        {
            for (var tries = 0; tries < 500; tries++)
            {
                lock (_states)
                {
                    if (_states.TryGetValue(id, out var state) && answer(state) is { } found)
                    {
                        return found;
                    }
                }

                await Task.Delay(20);
            }

            throw new TimeoutException($"Widget {id} did not come to what was waited for in 10 s.");
        }

        private void Open(ClientComm comm, CommMessage message)
        {
            lock (_states)
            {
                _states[comm.Id] = message.Data.Object("state").Copy();
                _latest[message.Data.Object("state").Text("_model_name")] = comm;
            }

            comm.Received += update =>
            {
                lock (_states)
                {
                    foreach (var (name, value) in update.Data.Object("state"))
                    {
                        _states[comm.Id][name] = value?.DeepClone();
                    }
                }
            };
        }
    }

    [Fact]
    public async Task A_named_value_is_shown_for_the_text_to_quote()
    {
        var ran = await kernel.Client.RunAsync("Value(\"zone-step\", 94.9, \"+0.0 min\");");
        var value = ran.Outputs.OfType<DisplayOutput>().Single().Data.Object("application/vnd.sunlessons.value+json");
        Assert.Equal(("zone-step", "+94.9 min"), (value.Text("name"), value.Text("text")));
    }
}
