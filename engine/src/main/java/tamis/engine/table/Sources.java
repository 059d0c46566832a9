package tamis.engine.table;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The works that facts are taken from: the engine's, and for a plugin's table those of a file
 * {@code sources.csv} that lies beside it.
 */
public final class Sources {
  private static final String FILE = "sources.csv";
  private static final String ENGINE_FOLDER = "/tamis/engine/";
  private static final Table TABLE = read(Sources.class, ENGINE_FOLDER);
  private static final Map<String, Source> STANDARD = byKey(TABLE, Map.of());

  private Sources() {}

  /** The engine's list as a table. */
  public static Table table() {
    return TABLE;
  }

  /** All works that rows of this resource may name, by key. */
  static Map<String, Source> beside(Class<?> owner, String resource) {
    String folder = resource.substring(0, resource.lastIndexOf('/') + 1);
    if (folder.equals(ENGINE_FOLDER) || owner.getResource(folder + FILE) == null) {
      return STANDARD;
    }
    return byKey(read(owner, folder), STANDARD);
  }

  private static Table read(Class<?> owner, String folder) {
    return TableReader.plain(
        owner, folder + FILE, "Works that the facts of the tables are taken from", List.of("key"));
  }

  private static Map<String, Source> byKey(Table table, Map<String, Source> others) {
    Map<String, Source> byKey = new HashMap<>(others);
    for (Row row : table.rows()) {
      Source source =
          new Source(
              row.text("key"),
              row.text("title"),
              row.text("edition"),
              row.text("publisher"),
              row.text("licence"));
      @Nullable Source other = byKey.put(source.key(), source);
      if (other != null) {
        throw new BadTable(
            table.name(),
            row.line(),
            "key",
            source.key() + " is already \"" + other.title() + "\"");
      }
    }
    return Map.copyOf(byKey);
  }
}
