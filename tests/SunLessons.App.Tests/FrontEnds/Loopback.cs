using System.Net;
using System.Net.Sockets;

namespace SunLessons.App.Tests.FrontEnds;

internal static class Loopback
{
    /// <summary>Ports of 127.0.0.1 that are free now; all different.</summary>
    public static int[] FreePorts(int count)
    {
        var listeners = Enumerable.Range(0, count).Select(_ => new TcpListener(IPAddress.Loopback, 0)).ToArray();
        foreach (var listener in listeners)
        {
            listener.Start();
        }

        var ports = listeners.Select(listener => ((IPEndPoint)listener.LocalEndpoint).Port).ToArray();
        foreach (var listener in listeners)
        {
            listener.Dispose();
        }

        return ports;
    }

    /// <summary>Asks an address until it answers with success; tells what <paramref name="whatItSaid"/> gives when the patience ends.</summary>
    public static async Task WaitForAsync(string address, Func<bool> hasEnded, Func<Task<string>> whatItSaid)
    {
        using var http = new HttpClient { Timeout = TimeSpan.FromSeconds(10) };
        for (var waited = 0; waited < 120 && !hasEnded(); waited++)
        {
            try
            {
                using var answer = await http.GetAsync(address);
                if (answer.IsSuccessStatusCode)
                {
                    return;
                }
            }
            catch (Exception exception) when (exception is HttpRequestException or TaskCanceledException)
            {
                // Not there yet.
            }

            await Task.Delay(500);
        }

        throw new InvalidOperationException($"{address} did not answer: {await whatItSaid()}");
    }
}
