namespace RehabTrack.Rechecks.Quantities;

/// <summary>
/// Something a person can mend: what is wrong and where. How it reads, and how to mend it, is a text of Wording under the same code.
/// </summary>
/// <param name="Field">The field or column, by its canonical name, for example <c>lesion_area_cm2</c>; empty when it concerns the whole.</param>
/// <param name="Code">The code of the problem, for example <c>lesion-larger-than-ligament</c>.</param>
/// <param name="Arguments">What the sentence needs: the value given, the limits, as invariant text.</param>
public sealed record Problem(string Field, string Code, params IReadOnlyList<string> Arguments);
