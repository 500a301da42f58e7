namespace RehabTrack.Web.Features.Days;

/// <summary>What is entered for somebody, as the address names it.</summary>
public enum DayForm
{
    /// <summary>A day's work.</summary>
    Log,

    /// <summary>A concern.</summary>
    Concern,

    /// <summary>Days without work.</summary>
    Away,

    /// <summary>Days with less work.</summary>
    Lower,
}
