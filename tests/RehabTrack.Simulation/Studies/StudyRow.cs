namespace RehabTrack.Simulation.Studies;

/// <summary>One figure of the study beside its bar.</summary>
/// <param name="Regime">How the cases were made and linked.</param>
/// <param name="What">What was counted.</param>
/// <param name="Bar">The bar; null for a figure that is only reported.</param>
/// <param name="Reached">The share found.</param>
/// <param name="Cases">What the share is taken of.</param>
public sealed record StudyRow(string Regime, string What, Bar? Bar, double Reached, int Cases)
{
    /// <summary>Whether the share keeps its bar, the study's own chance left aside.</summary>
    public bool Keeps => Bar is not { } bar || (bar.IsLeast ? Reached >= bar.Share : Reached <= bar.Share);

    /// <summary>
    /// Whether it keeps its bar as far as so many cases can tell: it lies beyond by no more than 2.33 binomial standard errors (one-sided
    /// 1 %).
    /// </summary>
    public bool KeepsWithinChance
    {
        get
        {
            if (Bar is not { } bar)
            {
                return true;
            }

            double margin = 2.33 * Math.Sqrt(bar.Share * (1 - bar.Share) / Cases);
            return bar.IsLeast ? Reached >= bar.Share - margin : Reached <= bar.Share + margin;
        }
    }
}
