namespace RehabTrack.Reports.Paper;

/// <summary>The letters that the paper has: those of the pages, and those of the scripts that these cannot write.</summary>
internal enum PaperFace
{
    Own,
    OtherScripts,
}
