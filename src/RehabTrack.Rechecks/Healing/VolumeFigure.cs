namespace RehabTrack.Rechecks.Healing;

/// <summary>A lesion volume with its error.</summary>
/// <param name="Volume">cm³, at least 0.</param>
/// <param name="StandardError">cm³, above 0, gain included; as if one person had measured throughout unless it is asked against another examination.</param>
/// <param name="IsLowerBound">Whether an end still shows lesion, or a part of the lesion could not enter.</param>
internal readonly record struct VolumeFigure(double Volume, double StandardError, bool IsLowerBound)
{
    /// <summary>Below twice its error a volume cannot be told from none.</summary>
    public bool IsMeasurable => Volume >= 2 * StandardError;
}
