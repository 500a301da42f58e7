namespace RehabTrack.Rechecks.Linking;

/// <summary>The terms of the odds of a link, in log: how well measurements agree, and how often a track is read.</summary>
internal sealed class LinkTerms(LinkingSettings settings)
{
    /// <summary>
    /// Log odds that a track is read once more, over the density of levels that belong to no track yet. Tracks are lasting places, read
    /// but for misses, or levels added once that hardly return; how often the others read it tells which.
    /// </summary>
    public double LogPresence(Consensus consensus, int row, double spacing)
    {
        int looks = consensus.Looks[row];
        int readings = consensus.Readings[row];
        double lasting = Lasting(readings, looks);
        double added = Added(readings);
        double missed = settings.MissedShare;
        double again = ((lasting * (1 - missed)) + (added * settings.AddedAgainShare)) / (lasting + added);
        double newcomers = (settings.AddedShare + ((1 - missed) * Math.Pow(missed, looks))) / spacing;
        return Math.Log(again / (1 - again) / newcomers);
    }

    /// <summary>Log odds that two tracks that no examination saw both of are one place.</summary>
    public double LogOddsOfOne(Consensus consensus, int first, int second, double spacing)
    {
        int looks = Math.Max(consensus.Looks[first], consensus.Looks[second]);
        int readings = consensus.Readings[first];
        int others = consensus.Readings[second];
        double presence = Math.Log(
            spacing
                * (Lasting(readings + others, Math.Max(looks, readings + others)) + Added(readings + others))
                / ((Lasting(readings, looks) + Added(readings)) * (Lasting(others, looks) + Added(others)))
        );
        double variance = settings.TapeStandardDeviationCm * settings.TapeStandardDeviationCm * ((1.0 / readings) + (1.0 / others));
        double away = consensus.Position[second] - consensus.Position[first];
        double position = (-0.5 * Math.Log(2 * Math.PI * variance)) - (0.5 * away * away / variance);
        return presence + position + LigamentOfTracks(consensus, first, second) + LesionOfTracks(consensus, first, second);
    }

    /// <summary>What the ligament area, or the thickness in its stead, says of a link.</summary>
    public double Ligament(Consensus consensus, int row, PlaceNode place, double size)
    {
        if (consensus.LigamentReadings[row] > 0 && !double.IsNaN(place.LogLigamentArea))
        {
            double difference = place.LogLigamentArea - size - consensus.LogLigamentArea[row];
            return Area(
                difference,
                1 + (1.0 / consensus.LigamentReadings[row]),
                difference * consensus.Earlier[row] >= 0 ? settings.LigamentGrowthPenaltyCap : settings.LigamentPenaltyCap
            );
        }

        return consensus.ThicknessReadings[row] > 0 && !double.IsNaN(place.LogThickness)
            ? Thickness(place.LogThickness - consensus.LogThickness[row], 1 + (1.0 / consensus.ThicknessReadings[row]))
            : 0;
    }

    /// <summary>What the lesion area says of a link to a track with this many readings.</summary>
    public LinkAgreement Lesion(int readings) => LesionOver(1 + (1.0 / readings));

    private double Lasting(int readings, int looks) =>
        Math.Pow(1 - settings.MissedShare, readings) * Math.Pow(settings.MissedShare, looks - readings);

    private double Added(int readings) => settings.AddedShare * Math.Pow(settings.AddedAgainShare, readings - 1);

    private double LigamentOfTracks(Consensus consensus, int first, int second)
    {
        if (consensus.LigamentReadings[first] > 0 && consensus.LigamentReadings[second] > 0)
        {
            return Area(
                consensus.LogLigamentArea[second] - consensus.LogLigamentArea[first],
                (1.0 / consensus.LigamentReadings[first]) + (1.0 / consensus.LigamentReadings[second]),
                settings.LigamentPenaltyCap
            );
        }

        return consensus.ThicknessReadings[first] > 0 && consensus.ThicknessReadings[second] > 0
            ? Thickness(
                consensus.LogThickness[second] - consensus.LogThickness[first],
                (1.0 / consensus.ThicknessReadings[first]) + (1.0 / consensus.ThicknessReadings[second])
            )
            : 0;
    }

    private double LesionOfTracks(Consensus consensus, int first, int second)
    {
        if (consensus.LesionReadings[first] == 0 || consensus.LesionReadings[second] == 0)
        {
            return 0;
        }

        return consensus.Lesion[first] == 0 && consensus.Lesion[second] == 0
            ? settings.NoLesionAgreement
            : LesionOver((1.0 / consensus.LesionReadings[first]) + (1.0 / consensus.LesionReadings[second]))
                .LogOdds(Math.Asinh(consensus.Lesion[second]) - Math.Asinh(consensus.Lesion[first]));
    }

    private double Area(double difference, double share, double cap) =>
        new LinkAgreement(settings.LogLigamentAreaStandardDeviation, share, settings.LogLigamentAreaBackground, cap).LogOdds(difference);

    private double Thickness(double difference, double share) =>
        new LinkAgreement(
            settings.LogThicknessStandardDeviation,
            share,
            settings.LogThicknessBackground,
            settings.LigamentPenaltyCap
        ).LogOdds(difference);

    private LinkAgreement LesionOver(double share) =>
        new(settings.LogLesionAreaStandardDeviation, share, settings.LogLesionAreaBackground, settings.LesionPenaltyCap);
}
