using System.Text;
using System.Text.Json.Nodes;
using System.Threading.Channels;
using NetMQ;
using NetMQ.Sockets;

namespace Waywright.Kernel;

/// <summary>The kernel's five sockets. One thread reads and writes them; whoever wants to send puts the message into its queue.</summary>
internal sealed class JupyterSockets : IDisposable
{
    private static readonly TimeSpan LastWords = TimeSpan.FromSeconds(2);

    private readonly JupyterFrames _frames;
    private readonly RouterSocket _shell = new();
    private readonly RouterSocket _control = new();
    private readonly RouterSocket _input = new();
    private readonly RouterSocket _heartbeat = new();
    private readonly PublisherSocket _publish = new();
    private readonly NetMQQueue<(NetMQSocket Socket, IReadOnlyList<byte[]> Frames)> _outbox = new();
    private readonly NetMQPoller _poller;
    private readonly Channel<JupyterRequest> _shellRequests = Channel.CreateUnbounded<JupyterRequest>();
    private readonly Channel<JupyterRequest> _controlRequests = Channel.CreateUnbounded<JupyterRequest>();

    private JupyterSockets(JupyterFrames frames)
    {
        _frames = frames;
        _poller = [_shell, _control, _input, _heartbeat, _outbox];
    }

    public ChannelReader<JupyterRequest> Shell => _shellRequests.Reader;

    public ChannelReader<JupyterRequest> Control => _controlRequests.Reader;

    /// <summary>Binds all sockets and begins to listen.</summary>
    /// <param name="connection">Where.</param>
    /// <param name="file">Its file, for messages.</param>
    /// <exception cref="InputException">A port is taken.</exception>
    public static JupyterSockets Open(ConnectionFile connection, string file)
    {
        var sockets = new JupyterSockets(new JupyterFrames(new Signature(connection.Key)));
        try
        {
            Bind(sockets._shell, connection.Address, connection.Shell, "shell_port", file);
            Bind(sockets._control, connection.Address, connection.Control, "control_port", file);
            Bind(sockets._input, connection.Address, connection.Input, "stdin_port", file);
            Bind(sockets._heartbeat, connection.Address, connection.Heartbeat, "hb_port", file);
            Bind(sockets._publish, connection.Address, connection.Publish, "iopub_port", file);
            sockets.Listen();
            return sockets;
        }
        catch
        {
            sockets.Dispose();
            throw;
        }
    }

    public void Reply(JupyterRequest request, JsonObject content)
    {
        var type = request.Type.Replace("_request", "_reply", StringComparison.Ordinal);
        var socket = request.Channel == RequestChannel.Shell ? _shell : _control;
        _outbox.Enqueue((socket, _frames.Write(request.Peers, type, request.Header, content)));
    }

    /// <summary>Tells every front end; the parent is the request that it belongs to.</summary>
    public void Publish(string type, JupyterRequest? parent, JsonObject content) =>
        _outbox.Enqueue((_publish, _frames.Write([Encoding.ASCII.GetBytes($"kernel.{type}")], type, parent?.Header, content)));

    /// <summary>Sends what is in the queue, then closes.</summary>
    public void Dispose()
    {
        if (_poller.IsRunning)
        {
            // The poller's own thread sends: what was put in before this comes out before it.
            using var sent = new ManualResetEventSlim();
            _poller.Run(sent.Set);
            sent.Wait(LastWords);
            _poller.Stop();
        }

        _poller.Dispose();
        _outbox.Dispose();
        foreach (var socket in new NetMQSocket[] { _shell, _control, _input, _heartbeat, _publish }) socket.Dispose();
        NetMQConfig.Cleanup(block: true);
    }

    private static void Bind(NetMQSocket socket, string address, int port, string field, string file)
    {
        socket.Options.Linger = LastWords;
        // Without a limit: at the usual one a publisher drops what a slow reader has not taken yet.
        socket.Options.SendHighWatermark = 0;
        socket.Options.ReceiveHighWatermark = 0;
        try
        {
            socket.Bind($"tcp://{address}:{port}");
        }
        catch (Exception e) when (e is NetMQException or System.Net.Sockets.SocketException)
        {
            var why = e is AddressAlreadyInUseException ? "another program holds" : "this program can't listen on";
            throw new InputException(new InputProblem(file, null, null, $"{field}: {port}, which {why}", "a free port of this machine"));
        }
    }

    private void Listen()
    {
        _shell.ReceiveReady += (_, ready) => Take(ready.Socket, RequestChannel.Shell, _shellRequests.Writer);
        _control.ReceiveReady += (_, ready) => Take(ready.Socket, RequestChannel.Control, _controlRequests.Writer);
        // This kernel asks nobody: an answer has no question.
        _input.ReceiveReady += (_, ready) => ready.Socket.ReceiveMultipartBytes();
        _heartbeat.ReceiveReady += (_, ready) => ready.Socket.SendMultipartBytes(ready.Socket.ReceiveMultipartBytes());
        _outbox.ReceiveReady += (_, ready) => Send(ready.Queue);
        _poller.RunAsync("jupyter");
    }

    private static void Send(NetMQQueue<(NetMQSocket Socket, IReadOnlyList<byte[]> Frames)> queue)
    {
        while (queue.TryDequeue(out var next, TimeSpan.Zero)) next.Socket.SendMultipartBytes(next.Frames);
    }

    private void Take(NetMQSocket socket, RequestChannel channel, ChannelWriter<JupyterRequest> requests)
    {
        if (_frames.Read(channel, socket.ReceiveMultipartBytes()) is { } request) requests.TryWrite(request);
    }
}
