using Mono.Cecil;
using RehabTrack.Architecture.Tests.Edges;

namespace RehabTrack.Architecture.Tests.Keeping;

/// <summary>What every record carries.</summary>
public sealed class RecordTests : IDisposable
{
    /// <summary>Parts of a record, and what is only ever added: each with what stands for it.</summary>
    private static readonly Dictionary<string, string> Parts = new(StringComparer.Ordinal)
    {
        ["ReadingRecord"] = "part of its examination, which carries version and archive mark",
        ["ExaminationVersionRecord"] = "only ever added",
        ["SignedFiguresRecord"] = "only ever added",
        ["ChangeRecord"] = "only ever added",
        ["AppliedCommandRecord"] = "only ever added",
        ["SignInAccount"] = "stands beside its person and goes with them; has a version of its own",
        ["SessionRecord"] = "lives for days; what happens to it is told in the trail by name",
        ["CaseSummaryRecord"] = "computed from its case and renewed with it",
    };

    private readonly AssemblyDefinition _records = Assemblies.Load("RehabTrack.Records");

    [Fact]
    public void A_kept_record_has_an_id_its_practice_a_version_and_an_archive_mark()
    {
        TypeDefinition kept = _records.MainModule.GetType("RehabTrack.Records.Keeping.KeptRecord");

        Assert.Equal(["ArchivedAt", "Id", "PracticeId", "Version"], kept.Properties.Select(one => one.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_record_is_kept_or_is_a_part_that_says_why_not() =>
        Assert.Equal(
            Parts.Keys.Order(StringComparer.Ordinal),
            Records().Where(record => !IsKept(record)).Select(one => one.Name).Order(StringComparer.Ordinal)
        );

    [Fact]
    public void Every_record_names_its_practice() => Expect.None(Records().Where(HasNoPractice).Select(record => record.Name));

    [Fact]
    public void A_planted_record_without_practice_is_found()
    {
        TypeDefinition planted = new(
            "RehabTrack.Records.Keeping",
            "PlantedRecord",
            TypeAttributes.Class,
            _records.MainModule.TypeSystem.Object
        );
        _records.MainModule.Types.Add(planted);
        TypeDefinition context = Context();
        PropertyDefinition horses = context.Properties.First(property => property.Name == "Horses");
        GenericInstanceType set = new(((GenericInstanceType)horses.PropertyType).ElementType);
        set.GenericArguments.Add(planted);
        context.Properties.Add(new PropertyDefinition("Planted", PropertyAttributes.None, set));

        Assert.Equal(["PlantedRecord"], Records().Where(HasNoPractice).Select(record => record.Name));
        Assert.False(IsKept(planted));
    }

    public void Dispose() => _records.Dispose();

    private TypeDefinition Context() => _records.MainModule.GetType("RehabTrack.Records.Keeping.RecordsContext");

    private IEnumerable<TypeDefinition> Records() =>
        Context()
            .Properties.Select(property => property.PropertyType)
            .OfType<GenericInstanceType>()
            .Where(type => type.Name == "DbSet`1")
            .Select(type => type.GenericArguments[0].Resolve());

    private static bool IsKept(TypeDefinition record) =>
        record.BaseType.Name == "KeptRecord" || (record.BaseType is TypeDefinition parent && IsKept(parent));

    private static bool HasNoPractice(TypeDefinition record) =>
        !IsKept(record) && record.Properties.All(property => property.Name != "PracticeId" || property.PropertyType.Name != "Guid");
}
