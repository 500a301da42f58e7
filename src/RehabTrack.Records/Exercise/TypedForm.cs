namespace RehabTrack.Records.Exercise;

/// <summary>A form whose fields are kept while they are typed.</summary>
public enum TypedForm
{
    /// <summary>A decision with the visit it rests on.</summary>
    Decision,
}
