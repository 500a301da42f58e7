namespace RehabTrack.Web.Features.Examinations.Worksheets;

/// <summary>A column of the entry grid, in the order of the page.</summary>
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
}
