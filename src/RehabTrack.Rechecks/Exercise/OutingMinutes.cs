namespace RehabTrack.Rechecks.Exercise;

/// <summary>Minutes by gait, of one outing or of a day.</summary>
/// <param name="Walk">Walk, min, at least 0.</param>
/// <param name="Trot">Trot, min, at least 0.</param>
/// <param name="Canter">Canter, min, at least 0.</param>
/// <param name="Gallop">Gallop, min, at least 0.</param>
public readonly record struct OutingMinutes(int Walk, int Trot = 0, int Canter = 0, int Gallop = 0)
{
    /// <summary>All gaits together, min.</summary>
    public int Total => Walk + Trot + Canter + Gallop;

    /// <summary>The minutes of a gait.</summary>
    /// <param name="gait">The gait.</param>
    public int Of(Gait gait) =>
        gait switch
        {
            Gait.Walk => Walk,
            Gait.Trot => Trot,
            Gait.Canter => Canter,
            Gait.Gallop => Gallop,
        };

    /// <summary>The sum, gait by gait.</summary>
    public static OutingMinutes operator +(OutingMinutes left, OutingMinutes right) =>
        new(left.Walk + right.Walk, left.Trot + right.Trot, left.Canter + right.Canter, left.Gallop + right.Gallop);

    /// <summary>The same outing so many times.</summary>
    public static OutingMinutes operator *(int times, OutingMinutes minutes) =>
        new(times * minutes.Walk, times * minutes.Trot, times * minutes.Canter, times * minutes.Gallop);

    /// <summary>The lesser of two, gait by gait.</summary>
    public static OutingMinutes Least(OutingMinutes left, OutingMinutes right) =>
        new(
            Math.Min(left.Walk, right.Walk),
            Math.Min(left.Trot, right.Trot),
            Math.Min(left.Canter, right.Canter),
            Math.Min(left.Gallop, right.Gallop)
        );

    /// <summary>
    /// The same minutes cut down to a total; the fastest gait gives way first. No gait rises, and what is within the total stays.
    /// </summary>
    /// <param name="total">The most that may be left, min; below 0 counts as 0.</param>
    public OutingMinutes CutTo(int total)
    {
        int left = Math.Max(0, total);
        int walk = Math.Min(Walk, left);
        int trot = Math.Min(Trot, left - walk);
        int canter = Math.Min(Canter, left - walk - trot);
        return new(walk, trot, canter, Math.Min(Gallop, left - walk - trot - canter));
    }

    /// <summary>Whether no gait is above the other's.</summary>
    public bool IsWithin(OutingMinutes other) =>
        Walk <= other.Walk && Trot <= other.Trot && Canter <= other.Canter && Gallop <= other.Gallop;
}
