using System.Reflection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using RehabTrack.Records.Accounts;
using RehabTrack.Records.History;
using RehabTrack.Records.Keeping;
using RehabTrack.Records.Room;

namespace RehabTrack.Records.Start;

/// <summary>Registers the use cases. They hold nothing of their own: one of each serves everybody.</summary>
public static class RecordsServices
{
    /// <summary>Adds all use cases and the steps of starting up; a provider adds the database.</summary>
    public static IServiceCollection AddRecords(this IServiceCollection services)
    {
        ArgumentNullException.ThrowIfNull(services);
        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton(provider => new RecordsAccess(
            provider.GetRequiredService<IDbContextFactory<RecordsContext>>(),
            provider.GetRequiredService<TimeProvider>(),
            provider.GetService<IStoreTrouble>()
        ));
        foreach (Type useCase in UseCases())
        {
            services.AddSingleton(useCase);
        }

        services.AddSingleton<SignInDoor>();
        services.AddSingleton<FeedDoor>();
        services.AddSingleton<AccessBook>();
        services.AddSingleton<VerifyTrail>();
        services.AddSingleton<ShareDoor>();
        services.AddSingleton<ForgetOldWords>();
        services.AddSingleton<SetUpDoor>();
        services.AddSingleton<AccountStore>();
        services.AddSingleton<SessionDoor>();
        services.AddSingleton<InvitationDoor>();
        services.AddSingleton<LoadDemo>();
        services.AddSingleton<RenewSummaries>();
        return services;
    }

    internal static IEnumerable<Type> UseCases() =>
        Assembly.GetExecutingAssembly().GetTypes().Where(type => !type.IsAbstract && IsUseCase(type));

    internal static bool IsUseCase(Type type)
    {
        for (Type? current = type.BaseType; current is not null; current = current.BaseType)
        {
            if (current.IsGenericType && current.GetGenericTypeDefinition() == typeof(UseCase<,>))
            {
                return true;
            }
        }

        return false;
    }
}
