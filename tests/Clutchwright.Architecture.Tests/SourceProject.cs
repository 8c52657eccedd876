using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;

namespace Clutchwright.Architecture.Tests;

/// <summary>One project of <c>src</c>: what its file names and what its assembly uses.</summary>
internal sealed record SourceProject(
    string Name, string Folder, string AssemblyName, IReadOnlyList<string> References, IReadOnlyList<string> Packages, string FileText)
{
    /// <summary>Gets the place of its assembly beside the tests.</summary>
    public string AssemblyPath => Path.Combine(AppContext.BaseDirectory, AssemblyName + ".dll");

    public static SourceProject Read(string path)
    {
        var file = XDocument.Load(path);
        var name = Path.GetFileNameWithoutExtension(path);
        return new(
            name,
            Path.GetRelativePath(Checkout.Root, Path.GetDirectoryName(path)!).Replace('\\', '/'),
            file.Descendants("AssemblyName").FirstOrDefault()?.Value ?? name,
            [.. file.Descendants("ProjectReference").Select(r => Path.GetFileNameWithoutExtension(Included(r)))],
            [.. file.Descendants("PackageReference").Select(Included)],
            File.ReadAllText(path));
    }

    public Assembly Load() => Assembly.LoadFrom(AssemblyPath);

    /// <summary>Lists the types of other assemblies that the code names, as <c>Namespace.Type</c>.</summary>
    public IReadOnlyList<string> TypesUsed() => Read(reader => reader.TypeReferences
        .Select(reader.GetTypeReference)
        .Select(t => FullName(reader, t)));

    /// <summary>Lists the members of other assemblies' types that the code names, as <c>Namespace.Type.Member/parameters</c>.</summary>
    public IReadOnlyList<string> MembersUsed() => Read(reader => reader.MemberReferences
        .Select(reader.GetMemberReference)
        .Where(m => m.Parent.Kind == HandleKind.TypeReference && m.GetKind() == MemberReferenceKind.Method)
        .Select(m =>
        {
            var signature = reader.GetBlobReader(m.Signature);
            signature.ReadSignatureHeader();
            var type = FullName(reader, reader.GetTypeReference((TypeReferenceHandle)m.Parent));
            return $"{type}.{reader.GetString(m.Name)}/{signature.ReadCompressedInteger()}";
        }));

    /// <summary>Lists the other projects' assemblies that the assembly uses.</summary>
    public IReadOnlyList<string> AssembliesUsed() => Read(reader => reader.AssemblyReferences
        .Select(a => reader.GetString(reader.GetAssemblyReference(a).Name)));

    public override string ToString() => Name;

    private static string Included(XElement item) => (item.Attribute("Include")?.Value ?? string.Empty).Replace('\\', '/');

    private static string FullName(MetadataReader reader, TypeReference type) =>
        $"{reader.GetString(type.Namespace)}.{reader.GetString(type.Name)}";

    private IReadOnlyList<string> Read(Func<MetadataReader, IEnumerable<string>> list)
    {
        using var file = new PEReader(File.OpenRead(AssemblyPath));
        return [.. list(file.GetMetadataReader()).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
    }
}
