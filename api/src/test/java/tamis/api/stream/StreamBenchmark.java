package tamis.api.stream;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import tamis.api.plugin.PluginLoader;
import tamis.api.plugin.Plugins;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.QueryInput;
import tamis.api.version.Versions;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.spi.Calculation;

/**
 * Records a second of a stream, beside Jackson reading the same lines into maps and writing as many
 * bytes from maps; one thread.
 *
 * <pre>mvn -q -pl api -am -Pbench -Dbench=Stream</pre>
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(1)
@Warmup(iterations = 4, time = 2)
@Measurement(iterations = 4, time = 2)
public class StreamBenchmark {
  private static final int RECORDS = 1_000;
  private static final List<String> FOODS =
      List.of("all-purpose-flour", "sugar-granulated", "butter-unsalted", "honey", "cocoa-powder");

  @Param({"conversion", "scaling"})
  public String calculation;

  private final ObjectMapper mapper = new ObjectMapper();
  private final List<Map<?, ?>> answered = new ArrayList<>();
  private byte[] records;
  private LineAnswers<?, ?> answers;

  @Setup
  public void prepare() throws IOException {
    var plugins =
        PluginLoader.load(
            StreamBenchmark.class.getClassLoader(),
            null,
            Versions.ofThisBuild(),
            Duration.ofSeconds(10));
    answers = answers(plugins.calculation(calculation), plugins);
    records = records().getBytes(StandardCharsets.UTF_8);
    var out = new ByteArrayOutputStream();
    copy(out);
    for (var line : out.toString(StandardCharsets.UTF_8).split("\n")) {
      answered.add(mapper.readValue(line, Map.class));
    }
    if (answered.get(0).containsKey("problem")) {
      throw new IllegalStateException(String.valueOf(answered.get(0)));
    }
  }

  private static LineAnswers<?, ?> answers(Calculation<?, ?> calculation, Plugins plugins) {
    return LineAnswers.of(
        calculation,
        QueryInput.options("sources=no", calculation, 8_192),
        new Pantry(Shelf.empty(), plugins.fittings(Limits.usual())),
        plugins.guard(calculation.name()),
        new LineAnswers.Reading(1 << 20, JsonLimits.usual(), Limits.usual()));
  }

  private String records() throws IOException {
    var text = new StringBuilder();
    var formula =
        mapper.writeValueAsString(
            mapper.readTree(Files.readString(Path.of("../demo-data/formulas/brioche.json"))));
    for (int i = 0; i < RECORDS; i++) {
      if (calculation.equals("scaling")) {
        text.append("{\"formula\":").append(formula).append(",\"to\":{\"mass\":\"");
        text.append(1 + i % 40).append(" kg\"}}\n");
      } else {
        text.append("{\"quantity\":\"").append(1 + i % 40).append(" 1/4 cup\",\"ingredient\":\"");
        text.append(FOODS.get(i % FOODS.size())).append("\",\"unit\":\"g\"}\n");
      }
    }
    return text.toString();
  }

  private void copy(OutputStream out) throws IOException {
    var lines = new InputLines(new ByteArrayInputStream(records), answers.lineBytes(), 0);
    while (lines.next()) {
      out.write(answers.answer(lines).bytes());
      out.write('\n');
    }
  }

  @Benchmark
  @OperationsPerInvocation(RECORDS)
  public long stream() throws IOException {
    var out = new Counted();
    copy(out);
    return out.bytes;
  }

  @Benchmark
  @OperationsPerInvocation(RECORDS)
  public long jacksonAlone() throws IOException {
    var out = new Counted();
    try (var read = mapper.readerFor(Map.class).<Map<?, ?>>readValues(records)) {
      var writer = mapper.writer().without(JsonGenerator.Feature.AUTO_CLOSE_TARGET);
      for (int i = 0; read.hasNext(); i++) {
        if (read.next().isEmpty()) {
          throw new IllegalStateException("a record is empty");
        }
        writer.writeValue(out, answered.get(i));
        out.write('\n');
      }
    }
    return out.bytes;
  }

  /** Takes all and keeps nothing. */
  private static final class Counted extends OutputStream {
    private long bytes;

    @Override
    public void write(int one) {
      bytes++;
    }

    @Override
    public void write(byte[] some, int from, int length) {
      bytes += length;
    }
  }
}
