namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>A column of the entry grid. The order is that of the texts in a kept draft: new columns come last.</summary>
public enum EntryColumn
{
    Part,
    Level,
    Lesion,
    Role,
    LigamentArea,
    LesionArea,
    Thickness,
    Width,
    Echogenicity,
    FibreAlignment,
    Note,
    OtherLimbLigamentArea,
    OtherLimbThickness,
}
