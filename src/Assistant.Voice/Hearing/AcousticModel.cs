using System.Runtime.InteropServices;

namespace Assistant.Voice.Hearing;

/// <summary>Where the acoustic model and the general pronunciation dictionary lie, and whether all that hearing needs is installed.</summary>
/// <param name="Folder">The model's folder.</param>
/// <param name="Dictionary">The general pronunciation dictionary.</param>
public sealed record AcousticModel(string Folder, string Dictionary)
{
    /// <summary>Where Debian's pocketsphinx-en-us puts them.</summary>
    public static AcousticModel Installed { get; } = new("/usr/share/pocketsphinx/model/en-us/en-us", "/usr/share/pocketsphinx/model/en-us/cmudict-en-us.dict");

    /// <exception cref="VoicePartMissingException">Names the packages to install.</exception>
    public void Check()
    {
        foreach (var (library, package) in new[] { ("libsphinxbase.so.3", "libsphinxbase3"), ("libpocketsphinx.so.3", "libpocketsphinx3") })
        {
            if (!NativeLibrary.TryLoad(library, out _))
            {
                throw new VoicePartMissingException($"Hearing is off: {library} is missing; install it with: apt-get install {package} pocketsphinx-en-us");
            }
        }

        if (!Directory.Exists(Folder) || !File.Exists(Dictionary))
        {
            throw new VoicePartMissingException($"Hearing is off: the speech model is not in {Folder}; install it with: apt-get install pocketsphinx-en-us");
        }
    }
}
