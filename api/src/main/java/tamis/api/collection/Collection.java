package tamis.api.collection;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.LongConsumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.Answers;
import tamis.api.representation.Format;
import tamis.api.representation.Options;
import tamis.api.representation.ResultJson;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.record.Component;
import tamis.engine.record.Shape;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/** Goes through the files of a collection and writes a formula for each recipe. */
public final class Collection implements AutoCloseable {
  /** The calculation that reads a recipe. */
  public static final String CALCULATION = "intake";

  /** Code of its remark that a part of a file could not be read. */
  private static final String PART_BROKEN = "part-broken";

  private final Task task;
  private final Calculation<?, ?> calculation;
  private final Kitchen kitchen;
  private final OutFolder out;
  private final SideFile side;
  private final List<String> rejected = new ArrayList<>();
  private int recipes;
  private int lines;

  /** In which form formulas are written. */
  public enum Form {
    JSON,
    NDJSON,
    JSONLD,
    CSV
  }

  /**
   * What is to be done.
   *
   * @param out folder of the formulas
   * @param side table of lines that could not be read
   * @param charset of files that are not UTF-8, or null
   * @param options further inputs of the calculation, for every recipe
   */
  public record Task(
      List<SourceFile> files,
      Path out,
      Form form,
      Path side,
      @Nullable Charset charset,
      Map<String, Object> options) {}

  private Collection(
      Task task, Calculation<?, ?> calculation, Kitchen kitchen, OutFolder out, SideFile side) {
    this.task = task;
    this.calculation = calculation;
    this.kitchen = kitchen;
    this.out = out;
    this.side = side;
  }

  /**
   * @throws Refusal if the table of open lines is there and cannot be read
   */
  public static Collection of(Task task, Calculation<?, ?> calculation, Kitchen kitchen)
      throws IOException {
    var names = task.files().stream().map(SourceFile::name).collect(Collectors.toSet());
    var paths =
        task.files().stream()
            .map(file -> file.path().toAbsolutePath().normalize())
            .collect(Collectors.toSet());
    var out = OutFolder.at(task.out(), origin -> names.contains(fileOf(origin)), paths);
    return new Collection(task, calculation, kitchen, out, SideFile.at(task.side()));
  }

  /** How many bytes there are to go through. */
  public long bytes() {
    return task.files().stream().mapToLong(SourceFile::bytes).sum();
  }

  /** Goes through all files; the rest is done where one cannot be read. */
  public void read(LongConsumer progress) throws IOException {
    if (task.form() == Form.NDJSON) {
      try (var all = out.growing("formulas.ndjson")) {
        readAll(progress, all);
        all.whole();
      }
    } else {
      readAll(progress, null);
    }
    side.write();
  }

  private void readAll(LongConsumer progress, OutFolder.@Nullable Growing all) throws IOException {
    long done = 0;
    for (var file : task.files()) {
      try {
        if (!out.holds(file.path())) {
          read(file, all);
        }
      } catch (SourceFile.Unreadable unreadable) {
        rejected.add(file.name() + " " + unreadable.getMessage());
      } catch (Refusal refusal) {
        rejected.add(file.name() + ": " + refusal.faults().get(0).message());
      }
      done += file.bytes();
      progress.accept(done);
    }
  }

  private void read(SourceFile file, OutFolder.@Nullable Growing all)
      throws SourceFile.Unreadable, IOException {
    String text = file.text(task.charset());
    int count = 1;
    for (int recipe = 1; recipe <= count; recipe++) {
      var input = new LinkedHashMap<>(task.options());
      input.put(file.form(), text);
      if (recipe > 1) {
        input.put("recipe", recipe);
      }
      var corrections = side.correctionsOf(file.name(), recipe);
      if (!corrections.isEmpty()) {
        input.put("corrections", corrections);
      }
      var answer = kitchen.calculate(CALCULATION, input);
      count = Math.max(count, ((Number) value(answer.result(), "recipes")).intValue());
      if (recipe == 1) {
        tellBroken(file, answer);
      }
      recipes++;
      lines += ((Number) value(answer.result(), "understood")).intValue();
      open(file, recipe, answer.result());
      write(file, recipe, answer, all);
    }
  }

  private void tellBroken(SourceFile file, Answer<?> answer) {
    answer.remarks().stream()
        .filter(remark -> remark.code().equals(PART_BROKEN))
        .forEach(remark -> rejected.add(file.name() + ": " + remark.message()));
  }

  private void open(SourceFile file, int recipe, Record result) {
    for (var open : (List<?>) value(result, "unresolved")) {
      var row = (Record) open;
      side.add(
          file.name(),
          recipe,
          ((Number) value(row, "line")).intValue(),
          String.valueOf(value(row, "text")),
          String.valueOf(value(row, "why")),
          String.join(
              ", ", ((List<?>) value(row, "candidates")).stream().map(String::valueOf).toList()));
    }
  }

  private void write(SourceFile file, int recipe, Answer<?> answer, OutFolder.@Nullable Growing all)
      throws IOException {
    @Nullable Object read = valueOrNull(answer.result(), "formula");
    if (!(read instanceof Formula formula)) {
      rejected.add(file.name() + " holds no line of ingredients that could be read");
      return;
    }
    String origin = file.name().replace('\n', ' ') + "#" + recipe;
    String ending = all == null ? "." + task.form().name().toLowerCase(Locale.ROOT) : "";
    String id = out.take(words(formula, file), ending, origin);
    byte[] bytes =
        switch (task.form()) {
          case JSON, NDJSON -> ResultJson.bytes(named(formula, id, file.name()));
          case JSONLD -> rendered(calculation, answer, "ld+json");
          case CSV ->
              LinesTable.with(
                  rendered(calculation, answer, "csv"), named(formula, id, file.name()));
        };
    if (all == null) {
      out.write(id + ending, bytes, origin);
    } else {
      all.add(bytes);
    }
  }

  private static String fileOf(String origin) {
    int recipe = origin.lastIndexOf('#');
    return recipe < 0 ? origin : origin.substring(0, recipe);
  }

  @SuppressWarnings("unchecked") // the answer is of this calculation
  private static <R extends Record> byte[] rendered(
      Calculation<?, R> calculation, Answer<?> answer, String form) {
    var lines = new Options(null, "/formula/lines", false, false, null, false, true, true, null);
    var format = form.equals("csv") ? Format.CSV : Format.rendering("application/" + form);
    return Answers.body(calculation, (Answer<R>) answer, 0, format, lines).bytes();
  }

  private static String words(Formula formula, SourceFile file) {
    if (formula.id() != null) { // it was a document before
      return formula.id();
    }
    String slug = slug(formula.title() == null ? file.stem() : formula.title());
    String base = slug.isEmpty() ? slug(file.stem()) : slug;
    return base.isEmpty() ? "formula" : base;
  }

  private static String slug(String words) {
    String plain =
        java.text.Normalizer.normalize(words, java.text.Normalizer.Form.NFD)
            .replaceAll("\\p{Mn}", "")
            .toLowerCase(Locale.ROOT)
            .replaceAll("[^a-z0-9]+", "-");
    String cut = plain.length() > 60 ? plain.substring(0, 60) : plain;
    String id = cut.replaceAll("^-|-$", "");
    return Ingredient.isId(id) ? id : "";
  }

  private static Formula named(Formula formula, String id, String origin) {
    return new Formula(
        id,
        formula.title(),
        formula.measures(),
        formula.lines(),
        formula.yield(),
        formula.stages(),
        formula.shelfLife(),
        formula.packaging(),
        formula.flour(),
        formula.notes(),
        formula.origin() == null ? origin : formula.origin());
  }

  private static Object value(Record record, String name) {
    return Objects.requireNonNull(valueOrNull(record, name), name);
  }

  private static @Nullable Object valueOrNull(Record record, String name) {
    @Nullable Component component = Shape.of(record.getClass()).component(name);
    return component == null ? null : component.of(record);
  }

  /** What happened, in one sentence. */
  public String told() {
    return recipes
        + (recipes == 1 ? " recipe" : " recipes")
        + " read, "
        + out.written()
        + (out.written() == 1 ? " file" : " files")
        + " written, "
        + lines
        + " lines understood, "
        + side.open()
        + " to look at";
  }

  /** What was not done, a sentence each. */
  public List<String> troubles() {
    var troubles = new ArrayList<>(rejected);
    out.kept().forEach((name, why) -> troubles.add(name + " " + why));
    if (side.open() > 0) {
      troubles.add(
          "lines to look at are in " + task.side() + "; write under `instead` and run again");
    }
    return troubles;
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
