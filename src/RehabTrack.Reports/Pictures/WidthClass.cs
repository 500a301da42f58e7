namespace RehabTrack.Reports.Pictures;

/// <summary>For which width a picture is drawn. A phone gets a drawing of its own, not a small copy.</summary>
public enum WidthClass
{
    /// <summary>A sheet on a desk or on paper.</summary>
    Desktop,

    /// <summary>A telephone held upright: fewer dates, larger type, the same marks.</summary>
    Phone,
}
