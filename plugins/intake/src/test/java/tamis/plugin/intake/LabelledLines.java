package tamis.plugin.intake;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import tamis.engine.spi.Answer;

/**
 * Lines with what a baker says that they mean: {@code text|language|quantity|unit|ingredient|
 * asWritten|state|preparation}. A quantity is a number, {@code low-high}, {@code as needed} or
 * empty; an empty ingredient must not be read as any. {@code ?a/b} is a name that leaves open which
 * of several is meant: it must stay open, or one of them be read and told with a remark. State and
 * preparation are as the reader divides them: words before the food, words behind it.
 */
final class LabelledLines {
  private static final double NEAR = 5e-4;

  private final Map<String, int[]> counts = new TreeMap<>();
  private final List<String> wrong = new ArrayList<>();
  private final List<String> silently = new ArrayList<>();
  private int lines;

  static LabelledLines of(String resource) {
    LabelledLines labelled = new LabelledLines();
    for (String line : text(resource).lines().skip(1).toList()) {
      labelled.check(line.split("\\|", -1));
    }
    return labelled;
  }

  private static String text(String resource) {
    try (InputStream in =
        LabelledLines.class.getResourceAsStream("/tamis/plugin/intake/" + resource)) {
      return new String(
          Objects.requireNonNull(in, resource).readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new IllegalStateException(broken);
    }
  }

  static Intake.Result read(String text, String language) {
    return Sent.answer("text", text, "language", language).result();
  }

  private void check(String[] label) {
    lines++;
    Answer<Intake.Result> answer = Sent.answer("text", label[0], "language", label[1]);
    Intake.Result result = answer.result();
    String where = label[0] + " -> ";
    if (result.lines().size() != 1) {
      wrong.add(where + "was no line of ingredients: " + result.passages());
      count("line", false, true, "a line");
      return;
    }
    IntakeLine line = result.lines().get(0);
    boolean told = !result.unresolved().isEmpty() || line.confidence() < 0.6;
    boolean quantity = quantity(line, label[2]);
    boolean unit = Objects.requireNonNullElse(line.unit(), "").equals(label[3]);
    String id = Objects.requireNonNullElse(line.ingredient(), "");
    boolean open = label[4].startsWith("?");
    boolean remarked = answer.remarks().stream().anyMatch(r -> r.code().equals("name-assumed"));
    boolean ingredient =
        open ? id.isEmpty() || isOneOf(label[4], id, told || remarked) : id.equals(label[4]);
    boolean words = line.asWritten().equals(label[5]);
    boolean state = Objects.requireNonNullElse(line.state(), "").equals(label[6]);
    boolean work = Objects.requireNonNullElse(line.preparation(), "").equals(label[7]);
    boolean amount = line.quantity() != null || line.asNeeded() != null;
    count("quantity", quantity, amount, label[2]);
    count("unit", unit, line.unit() != null, label[3]);
    count("ingredient", ingredient, line.ingredient() != null, label[4]);
    count("asWritten", words, !line.asWritten().isEmpty(), label[5]);
    count("state", state, line.state() != null, label[6]);
    count("preparation", work, line.preparation() != null, label[7]);
    boolean all = quantity && unit && ingredient && words && state && work;
    if (!all) {
      wrong.add(
          where + got(line) + " " + result.unresolved().stream().map(Unresolved::why).toList());
    }
    boolean badly = !quantity || !unit || !(ingredient || id.isEmpty());
    if (badly && !told) {
      silently.add(where + got(line));
    }
  }

  private static boolean isOneOf(String label, String id, boolean told) {
    return told && List.of(label.substring(1).split("/", -1)).contains(id);
  }

  private static String got(IntakeLine line) {
    return line.quantity()
        + "|"
        + line.unit()
        + "|"
        + line.ingredient()
        + "|"
        + line.asWritten()
        + "|"
        + line.state()
        + "|"
        + line.preparation()
        + "|"
        + line.asNeeded()
        + "|"
        + line.confidence();
  }

  private static boolean quantity(IntakeLine line, String label) {
    if (label.equals("as needed")) {
      return line.asNeeded() != null && line.quantity() == null;
    }
    if (label.isEmpty()) {
      return line.quantity() == null && line.asNeeded() == null;
    }
    if (line.quantity() instanceof Map<?, ?> range) {
      String[] ends = label.split("-");
      return ends.length == 2
          && near(range.get("low"), ends[0])
          && near(range.get("high"), ends[1]);
    }
    return label.indexOf('-') < 0 && near(line.quantity(), label);
  }

  private static boolean near(Object value, String label) {
    return value instanceof Double number && Math.abs(number - Double.parseDouble(label)) < NEAR;
  }

  /** Right in all lines; right of those given; given; labelled. */
  private void count(String field, boolean right, boolean given, String label) {
    int[] count = counts.computeIfAbsent(field, f -> new int[4]);
    count[0] += right ? 1 : 0;
    count[1] += right && given ? 1 : 0;
    count[2] += given ? 1 : 0;
    count[3] += label.isEmpty() ? 0 : 1;
  }

  double right(String field) {
    int[] count = counts.getOrDefault(field, new int[4]);
    return (double) count[0] / lines;
  }

  List<String> silentlyWrong() {
    return silently;
  }

  List<String> wrong() {
    return wrong;
  }

  String report(String name) {
    StringBuilder report = new StringBuilder(name + ", " + lines + " lines\n");
    counts.forEach(
        (field, count) ->
            report.append(
                String.format(
                    Locale.ROOT,
                    "  %-12s right %5.1f %%  precision %5.1f %%  recall %5.1f %%  labelled %d%n",
                    field,
                    100.0 * count[0] / lines,
                    100.0 * count[1] / Math.max(1, count[2]),
                    100.0 * count[1] / Math.max(1, count[3]),
                    count[3])));
    return report.append("  silently wrong ").append(silently.size()).append('\n').toString();
  }
}
