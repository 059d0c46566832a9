package tamis.api.store;

import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.record.Limit;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** Reads what was kept. It was checked when it came, perhaps under wider limits than today's. */
final class KeptJson {
  private static final JsonLimits JSON = new JsonLimits(1_000, 1_000);
  private static final RecordReader READER =
      new RecordReader(
          References.UNCHECKED,
          new Limits(everything(), Integer.MAX_VALUE, Integer.MAX_VALUE, 1_000));

  private KeptJson() {}

  private static Map<Limit, Integer> everything() {
    Map<Limit, Integer> counts = new EnumMap<>(Limit.class);
    for (Limit limit : Limit.values()) {
      counts.put(limit, Integer.MAX_VALUE);
    }
    return counts;
  }

  static <T extends Record> T record(Class<T> type, String json) {
    return READER.read(type, StrictJson.tree(json.getBytes(StandardCharsets.UTF_8), JSON));
  }
}
