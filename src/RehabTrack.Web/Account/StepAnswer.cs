using Microsoft.AspNetCore.Components;
using RehabTrack.Rechecks.Quantities;
using RehabTrack.Web.Components.Forms;

namespace RehabTrack.Web.Account;

/// <summary>What a page does with a step of a sign-in: goes on, or says why not.</summary>
public static class StepAnswer
{
    /// <summary>Goes where the step leads, or shows why it was refused.</summary>
    public static void TakeStep(this FormProblems problems, SignInStep step, NavigationManager navigation, HttpContext context)
    {
        ArgumentNullException.ThrowIfNull(problems);
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(navigation);
        ArgumentNullException.ThrowIfNull(context);
        if (step.Address is { } address)
        {
            navigation.NavigateTo(address);
        }
        else
        {
            problems.Take([new Problem("", step.ProblemCode!)]);
            if (step.ProblemCode == "sign-in-busy")
            {
                context.Response.StatusCode = StatusCodes.Status429TooManyRequests;
            }
        }
    }
}
