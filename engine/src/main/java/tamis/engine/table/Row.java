package tamis.engine.table;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;

/**
 * One fact of a table.
 *
 * @param table the table's name
 * @param line its line in the file, the heading being line 1
 * @param key the cells that identify it, joined by {@code /}
 * @param cells all cells by column; empty cells are left out
 */
public record Row(String table, int line, String key, Map<String, String> cells) {

  /**
   * The text of a cell that must be filled.
   *
   * @throws BadTable if it is empty
   */
  public String text(String column) {
    @Nullable String cell = cells.get(column);
    if (cell == null) {
      throw new BadTable(table, line, column, "is empty");
    }
    return cell;
  }

  /** The text of a cell, or null if it is empty. */
  public @Nullable String textOrNull(String column) {
    return cells.get(column);
  }

  /**
   * The number in a cell that must be filled.
   *
   * @throws BadTable if it is empty or no finite number
   */
  public double number(String column) {
    @Nullable Double number = numberOrNull(column);
    if (number == null) {
      throw new BadTable(table, line, column, "is empty");
    }
    return number;
  }

  /** The number in a cell, or null if it is empty: not known is not zero. */
  public @Nullable Double numberOrNull(String column) {
    @Nullable String cell = cells.get(column);
    if (cell == null) {
      return null;
    }
    try {
      return Bounds.within(Double.parseDouble(cell), column, "", -1e15, 1e15);
    } catch (RuntimeException unreadable) {
      throw new BadTable(table, line, column, "is no number: " + cell);
    }
  }

  /** Whether a cell says {@code yes}; empty means no, anything else is a fault. */
  public boolean yes(String column) {
    @Nullable String cell = cells.get(column);
    if (cell == null || cell.equals("no")) {
      return false;
    }
    if (cell.equals("yes")) {
      return true;
    }
    throw new BadTable(table, line, column, "must be yes, no or empty, was " + cell);
  }

  /** The key of the source that this row names. */
  public String source() {
    return text("source");
  }
}
