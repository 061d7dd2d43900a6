using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using Waywright.Kernel;

namespace Waywright.EndToEnd.Sessions;

/// <summary>The parent's side alone, without a child.</summary>
public sealed class GatheredOutputTests
{
    [Fact]
    public void Outputs_beyond_the_limit_are_cut_once_and_the_error_still_comes()
    {
        var outputs = new CellOutputs(1, null);
        for (var i = 0; i < 100; i++) outputs.Add(new ValueDisplayed(null, new JsonObject { ["text/plain"] = "x" }), 1_000_000);
        outputs.Add(new StreamWritten("stdout", "y"), 1);
        outputs.Add(new CellFailed("E", "v", []));
        var all = outputs.ToList();
        Assert.Equal(64 + 2, all.Count);
        Assert.Equal("waywright: the cell's outputs are cut here, at 64 MB\n", (string?)all[64]["text"]);
        Assert.Equal("error", (string?)all[65]["output_type"]);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(10_000)]
    public async Task Marks_are_found_wherever_the_stream_is_cut(int pieces)
    {
        var text = $"one\u0002two{Wire.Mark("key", 1)}{Wire.Mark("key", 2)}three\u0002ke {Wire.Mark("kez", 4)}{Wire.Mark("key", 30)}\u0002";
        var received = Channel.CreateUnbounded<Received>();
        await RawOutput.DrainAsync(new InPieces(text, pieces), "stdout", "key", received.Writer, TestContext.Current.CancellationToken);
        received.Writer.Complete();
        var read = new StringBuilder();
        await foreach (var one in received.Reader.ReadAllAsync(TestContext.Current.CancellationToken))
            read.Append(one.Message is RawMark mark ? $"[{mark.Number}]" : ((RawText)one.Message).Text);
        Assert.Equal($"one\u0002two[1][2]three\u0002ke {Wire.Mark("kez", 4)}[30]\u0002", read.ToString());
    }

    private sealed class InPieces(string text, int length) : MemoryStream(Encoding.UTF8.GetBytes(text))
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            base.ReadAsync(buffer[..Math.Min(length, buffer.Length)], cancellationToken);
    }
}
