using System.Text.Json.Nodes;

namespace Waywright.EndToEnd.Jupyter;

/// <summary>Requests beside running a cell, as Jupyter's messaging specification 5.3 describes them, asked by Debian's jupyter_client.</summary>
public sealed class ProtocolTests(RunningKernel running) : IClassFixture<RunningKernel>
{
    private JupyterClient Client => running.Client;

    [Fact]
    public async Task The_kernel_says_what_it_is_on_shell_and_on_control()
    {
        foreach (var channel in new[] { "shell", "control" })
        {
            var info = await Client.AskAsync(channel, "kernel_info_request", []);
            Assert.Equal(("ok", "5.3", "waywright"), ((string)info["status"]!, (string)info["protocol_version"]!, (string)info["implementation"]!));
            Assert.Equal(("C#", ".cs", "text/x-csharp"), ((string)info["language_info"]!["name"]!, (string)info["language_info"]!["file_extension"]!, (string)info["language_info"]!["mimetype"]!));
        }
    }

    [Fact]
    public async Task The_heart_beats()
    {
        await Client.OrderAsync("beats");
        var beats = await Client.HearAsync(one => one.Type == "beats");
        Assert.True((bool)beats.Content["alive"]! && (bool)beats.Content["beating"]!);
    }

    [Fact]
    public async Task A_forged_a_cut_and_a_broken_message_are_dropped_and_the_kernel_goes_on()
    {
        var forged = await Client.SendAsync("shell", "kernel_info_request", [], how: "forge");
        await Client.OrderAsync(new JsonObject { ["do"] = "frames", ["channel"] = "shell", ["frames"] = new JsonArray("<IDS|MSG>", "no signature") });
        await Client.OrderAsync(new JsonObject { ["do"] = "frames", ["channel"] = "control", ["frames"] = new JsonArray("nothing", "of the kind") });
        var known = await Client.SendAsync("shell", "kernel_info_request", []);
        await Client.HearAsync(one => one.Channel == "shell" && one.Parent == known);
        await Client.HearAsync(one => one.Parent == known && JupyterClient.IsStatus(one, "idle"));
        // Answers come in the order of the requests: the forged one has none.
        Assert.False(await Client.HasHeardAsync(one => one.Parent == forged));
    }

    [Fact]
    public async Task Words_are_completed_from_variables_of_cells_and_places_are_counted_in_code_points()
    {
        await Client.RunAsync("var straightnessOfRail = 12.5;");
        // U+1F6E0 is one code point and two UTF-16 units.
        const string Code = "var tools = \"\U0001F6E0\"; straightnessOf";
        var completed = await Client.AskAsync("shell", "complete_request", new JsonObject { ["code"] = Code, ["cursor_pos"] = 31 });
        Assert.Equal("straightnessOfRail", (string?)Assert.Single(completed["matches"]!.AsArray()));
        Assert.Equal((17, 31), ((int)completed["cursor_start"]!, (int)completed["cursor_end"]!));
        var second = await Client.AskAsync("shell", "complete_request", new JsonObject { ["code"] = "1.5;\nConsole.WriteL", ["cursor_pos"] = 20 });
        Assert.Equal("WriteLine", (string?)Assert.Single(second["matches"]!.AsArray()));
    }

    [Fact]
    public async Task A_word_is_explained_and_an_empty_place_is_not()
    {
        await Client.RunAsync("using Waywright;");
        var found = await Client.AskAsync("shell", "inspect_request", new JsonObject { ["code"] = "MonteCarlo.Run(", ["cursor_pos"] = 14, ["detail_level"] = 0 });
        Assert.True((bool)found["found"]!);
        Assert.Contains("MonteCarloResult", (string)found["data"]!["text/plain"]!);
        var empty = await Client.AskAsync("shell", "inspect_request", new JsonObject { ["code"] = "   ", ["cursor_pos"] = 1, ["detail_level"] = 0 });
        Assert.False((bool)empty["found"]!);
    }

    [Theory]
    [InlineData("1 + 1", "complete", null)]
    [InlineData("#r \"nuget: Waywright.Notebooks\"\nvar x = 1;", "complete", null)]
    [InlineData("if (true)\n{", "incomplete", "    ")]
    [InlineData("foreach (var a in new[] { 1 })\n{\n    if (a > 0) {", "incomplete", "        ")]
    [InlineData("var text = \"\"\"", "incomplete", "")]
    [InlineData("var x = ;", "invalid", null)]
    public async Task Whether_a_cell_is_complete(string code, string status, string? indent)
    {
        var reply = await Client.AskAsync("shell", "is_complete_request", new JsonObject { ["code"] = code });
        Assert.Equal((status, indent), ((string?)reply["status"], (string?)reply["indent"]));
    }

    [Fact]
    public async Task History_is_empty_comms_are_none_and_an_opened_comm_is_closed()
    {
        var history = await Client.AskAsync("shell", "history_request", new JsonObject { ["hist_access_type"] = "tail", ["output"] = false, ["raw"] = true, ["n"] = 10 });
        Assert.Equal(("ok", 0), ((string?)history["status"], history["history"]!.AsArray().Count));
        var comms = await Client.AskAsync("shell", "comm_info_request", []);
        Assert.Equal(("ok", 0), ((string?)comms["status"], comms["comms"]!.AsObject().Count));
        var opened = await Client.SendAsync("shell", "comm_open", new JsonObject { ["comm_id"] = "talk", ["target_name"] = "nobody", ["data"] = new JsonObject() });
        var closed = await Client.HearAsync(one => one.Parent == opened && one.Type == "comm_close");
        Assert.Equal("talk", (string?)closed.Content["comm_id"]);
    }

    [Fact]
    public async Task A_request_that_nobody_knows_is_passed_over()
    {
        var unknown = await Client.SendAsync("shell", "dance_request", []);
        await Client.HearAsync(one => one.Parent == unknown && JupyterClient.IsStatus(one, "idle"));
        Assert.Equal("2", (string?)(await Client.RunAsync("Console.Write(1 + 1);")).Text("stdout"));
    }
}
