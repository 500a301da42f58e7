namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>A field above the grid: what is said of the whole examination.</summary>
public enum HeaderField
{
    Date,
    Name,
    Stance,
    Examiner,
    Measurer,
    Transducer,
    Standoff,
    Coupling,
    Clipped,
    EchogenicityScale,
    Landmark,
    Origin,
    Division,
    MedialInsertion,
    LateralInsertion,
    OtherLimb,
    Zones,
}
