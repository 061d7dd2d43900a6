using System.Runtime.InteropServices;

namespace Waywright.Publishing;

/// <summary>Exchanges two folders in one step, where the system can: nobody ever sees neither of them.</summary>
internal static class FolderSwap
{
    private const int WorkingFolder = -100; // AT_FDCWD, Linux fcntl.h
    private const uint Exchange = 2; // RENAME_EXCHANGE, Linux fs.h; RENAME_SWAP, macOS stdio.h

    /// <returns>False: the system or its file system can't, and nothing has changed.</returns>
    public static bool TryExchange(string one, string other)
    {
        try
        {
            if (OperatingSystem.IsLinux())
                return RenameAt2(WorkingFolder, one, WorkingFolder, other, Exchange) == 0;
            return OperatingSystem.IsMacOS() && RenameX(one, other, Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            return false;
        }
    }

    [DllImport("libc", EntryPoint = "renameat2", BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameAt2(int oneFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string one, int otherFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string other, uint how);

    [DllImport("libc", EntryPoint = "renamex_np", BestFitMapping = false, ThrowOnUnmappableChar = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameX([MarshalAs(UnmanagedType.LPUTF8Str)] string one, [MarshalAs(UnmanagedType.LPUTF8Str)] string other, uint how);
}
