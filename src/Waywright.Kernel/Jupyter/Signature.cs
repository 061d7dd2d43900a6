using System.Security.Cryptography;
using System.Text;

namespace Waywright.Kernel;

/// <summary>The signature of a message: HMAC-SHA-256 over its four parts, in lower-case hexadecimal.</summary>
internal sealed class Signature(string key)
{
    private readonly byte[] _key = Encoding.UTF8.GetBytes(key);

    public byte[] Of(IEnumerable<byte[]> parts)
    {
        using var hash = IncrementalHash.CreateHMAC(HashAlgorithmName.SHA256, _key);
        foreach (var part in parts) hash.AppendData(part);
        return Encoding.ASCII.GetBytes(Convert.ToHexStringLower(hash.GetHashAndReset()));
    }

    /// <summary>Compares in a time that tells nothing of where the two differ.</summary>
    public bool Holds(IEnumerable<byte[]> parts, byte[] signature) => CryptographicOperations.FixedTimeEquals(Of(parts), signature);
}
