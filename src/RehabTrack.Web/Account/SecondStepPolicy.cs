using RehabTrack.Records.Rights;
using RehabTrack.Web.Hosting;

namespace RehabTrack.Web.Account;

/// <summary>Whose sign-in needs a second step: vets and administrators, unless the server is told otherwise.</summary>
/// <param name="Roles">The roles; everybody else may set one up and need not.</param>
public sealed record SecondStepPolicy(IReadOnlySet<Role> Roles)
{
    /// <summary>The setting, as "Vet,Administrator,Assistant".</summary>
    public const string Setting = "SignIn:SecondStepFor";

    private static readonly Role[] Usual = [Role.Vet, Role.Administrator];

    /// <summary>Reads the setting; without one, vets and administrators.</summary>
    /// <exception cref="StartRefusedException">It names a role that does not exist.</exception>
    public static SecondStepPolicy Read(IConfiguration configuration)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        return configuration[Setting] is { } said ? new(new HashSet<Role>(Words(said).Select(RoleOf))) : new(new HashSet<Role>(Usual));
    }

    /// <summary>Whether a person of the role must have one.</summary>
    public bool Asks(Role role) => Roles.Contains(role);

    private static string[] Words(string said) => said.Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static Role RoleOf(string word) =>
        Enum.GetNames<Role>().FirstOrDefault(name => string.Equals(name, word, StringComparison.OrdinalIgnoreCase)) is { } name
            ? Enum.Parse<Role>(name)
            : throw new StartRefusedException(
                string.Format(
                    System.Globalization.CultureInfo.InvariantCulture,
                    Wording.StartUpTexts.SecondStepUnknown,
                    Setting,
                    word,
                    string.Join(", ", Enum.GetNames<Role>())
                )
            );
}
