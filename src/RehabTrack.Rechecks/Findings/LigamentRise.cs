using RehabTrack.Rechecks.Healing;

namespace RehabTrack.Rechecks.Findings;

/// <summary>The caution of a ligament that became larger: it goes by its lines alone, and no error holds it back.</summary>
public static class LigamentRise
{
    // Shares are quotients: a rise of exactly 10 % must not be told by its last binary digit.
    private const double Rounding = 1e-9;

    /// <summary>Amber above the amber line, red above the red one (Vet Times; ECM 333); null at or below the amber line.</summary>
    /// <param name="share">The rise as a share of the earlier area.</param>
    /// <param name="settings">Holds the lines.</param>
    public static FindingSeverity? SeverityOf(double share, TrendSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return share > settings.RedLigamentRise + Rounding ? FindingSeverity.Red
            : share > settings.AmberLigamentRise + Rounding ? FindingSeverity.Amber
            : null;
    }
}
