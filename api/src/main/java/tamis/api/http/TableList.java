package tamis.api.http;

import java.util.List;
import tamis.engine.record.Described;

/** All reference tables. */
public record TableList(@Described("Tables, by name") List<TableItem> items) {

  /** One table of the list. */
  public record TableItem(
      @Described(value = "Its name", example = "densities") String name,
      @Described(value = "What it holds", example = "Mass of a millilitre, by state") String title,
      @Described(value = "How many rows it has", example = "120") int rows) {}
}
