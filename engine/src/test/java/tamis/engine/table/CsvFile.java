package tamis.engine.table;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads a CSV file that is no table of ours, each record by the names of its columns. */
public final class CsvFile {
  private CsvFile() {}

  public static List<Map<String, String>> read(Path file) throws IOException {
    List<Csv.Line> lines = Csv.read(file.getFileName().toString(), Files.readString(file));
    List<String> columns = lines.get(0).fields();
    List<Map<String, String>> records = new ArrayList<>();
    for (Csv.Line line : lines.subList(1, lines.size())) {
      Map<String, String> record = new LinkedHashMap<>();
      for (int i = 0; i < columns.size(); i++) {
        record.put(columns.get(i), line.fields().get(i));
      }
      records.add(record);
    }
    return records;
  }
}
