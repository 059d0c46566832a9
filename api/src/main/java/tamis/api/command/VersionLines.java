package tamis.api.command;

import picocli.CommandLine.IVersionProvider;
import tamis.api.version.Versions;

/** What {@code --version} prints: each version that changes on its own. */
public final class VersionLines implements IVersionProvider {

  @Override
  public String[] getVersion() {
    var versions = Versions.ofThisBuild();
    return new String[] {
      "program " + versions.program(),
      "spi " + versions.spi(),
      "tables " + versions.tables(),
      "store " + versions.store()
    };
  }
}
