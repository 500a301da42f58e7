using System.Globalization;
using RehabTrack.Rechecks.Quantities;

namespace RehabTrack.Web.Features.Horses;

/// <summary>How large a horse's photo may be.</summary>
public static class PhotoLimits
{
    private static readonly ReferenceTable Table = ReferenceTable.Load("limits");

    /// <summary>Largest file, in megabytes of 1,048,576 bytes.</summary>
    public static int LargestMegabytes { get; } = (int)Table["largestPhotoMegabytes"];

    /// <summary>Largest picture, in million pixels: a small file can unfold to a huge one.</summary>
    public static int LargestMegapixels { get; } = (int)Table["largestPhotoMegapixels"];

    /// <summary>Largest file, in bytes.</summary>
    public static long LargestBytes { get; } = LargestMegabytes * 1024L * 1024L;

    /// <summary>What the sentence of a problem wants to know.</summary>
    public static string ArgumentOf(string code) =>
        (code == PhotoUpload.TooManyPixels ? LargestMegapixels : LargestMegabytes).ToString(CultureInfo.InvariantCulture);
}
