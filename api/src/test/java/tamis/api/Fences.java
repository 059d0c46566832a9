package tamis.api;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The fenced blocks of a page, in order. */
final class Fences {
  private Fences() {}

  /** One block: its language and its text. */
  record Block(String language, String text) {}

  /** The folder that holds README.md. */
  static Path top() {
    Path here = Path.of("").toAbsolutePath();
    while (here != null && !Files.exists(here.resolve("README.md"))) {
      here = here.getParent();
    }
    if (here == null) {
      throw new IllegalStateException("no README.md above the test");
    }
    return here;
  }

  static List<Block> of(String page) throws IOException {
    List<Block> blocks = new ArrayList<>();
    String language = null;
    StringBuilder text = new StringBuilder();
    for (String line : Files.readAllLines(top().resolve(page))) {
      if (!line.startsWith("```")) {
        text.append(line).append('\n');
      } else if (language == null) {
        language = line.substring(3).strip();
        text.setLength(0);
      } else {
        blocks.add(new Block(language, text.toString()));
        language = null;
      }
    }
    return blocks;
  }

  /** The rows of the table under a heading whose first cell begins so, cells stripped. */
  static List<List<String>> table(String page, String firstHeading) throws IOException {
    List<List<String>> rows = new ArrayList<>();
    boolean inside = false;
    for (String line : Files.readAllLines(top().resolve(page))) {
      if (line.startsWith("| " + firstHeading + " |")) {
        inside = true;
      } else if (inside && !line.startsWith("|")) {
        break;
      } else if (inside && !line.startsWith("| ---")) {
        rows.add(cells(line));
      }
    }
    return rows;
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    for (String cell : line.substring(1, line.lastIndexOf('|')).split("\\|", -1)) {
      cells.add(cell.strip());
    }
    return cells;
  }
}
