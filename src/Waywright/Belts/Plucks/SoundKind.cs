using System;

namespace Waywright;

/// <summary>What a file that isn't a WAV is, by its first bytes: common magic numbers, from memory of the formats' own descriptions.</summary>
internal static class SoundKind
{
    public const string Wanted = "a WAV recording (PCM or float)";

    /// <summary>The kind's name, or null when it isn't known.</summary>
    public static string? Of(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length >= 8 && bytes.Slice(4, 4).SequenceEqual("ftyp"u8))
            return "an MPEG-4 file (m4a, mp4)";
        if (bytes.StartsWith("ID3"u8))
            return "an mp3 file";
        if (bytes.StartsWith("OggS"u8))
            return "an ogg file (Vorbis, Opus)";
        if (bytes.StartsWith("fLaC"u8))
            return "a flac file";
        if (bytes.StartsWith("caff"u8))
            return "a caf file";
        if (bytes.StartsWith("FORM"u8))
            return "an aiff file";
        if (bytes.StartsWith("#!AMR"u8))
            return "an amr file";
        if (bytes.StartsWith("ADIF"u8))
            return "an aac file";
        if (bytes.StartsWith("RF64"u8) || bytes.StartsWith("riff"u8))
            return "a 64-bit WAV variant (RF64, W64)";
        if (bytes.StartsWith("RIFX"u8))
            return "a big-endian WAV (RIFX)";
        if (bytes is [0x1A, 0x45, 0xDF, 0xA3, ..])
            return "a Matroska or webm file";
        if (bytes is [0x30, 0x26, 0xB2, 0x75, ..])
            return "a wma file";
        if (bytes is [0xFF, var second, ..] && (second & 0xE0) == 0xE0)
            return (second & 0xF6) == 0xF0 ? "an aac file" : "an mp3 file";
        return null;
    }

    /// <summary>What to do about it.</summary>
    public static string Converted => Wanted + ": convert a copy, for example 'ffmpeg -i TAKE -c:a pcm_s16le TAKE.wav', or export it as WAV from the recorder";

    /// <summary>The name of a WAV's format code, after Microsoft's registry of wave formats (mmreg.h), from memory.</summary>
    public static string Codec(int code) => code switch
    {
        0x0002 => "Microsoft ADPCM",
        0x0006 => "A-law",
        0x0007 => "mu-law",
        0x0011 => "IMA ADPCM",
        0x0031 => "GSM 6.10",
        0x0050 => "MPEG audio",
        0x0055 => "mp3",
        0x00FF or 0x1610 => "AAC",
        0x0161 => "WMA",
        _ => "unknown coding",
    };
}
