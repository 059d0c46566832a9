package tamis.plugin.intake.page;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.quantity.Units;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.plugin.intake.line.Amount;
import tamis.plugin.intake.line.AmountReader;
import tamis.plugin.intake.word.Figures;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Finds times, temperatures and the station in a step of work. */
public final class StepReader {
  private static final int LONGEST_TITLE = 120;
  private static final int HOT_CELSIUS = 30;
  private static final int HOT_FAHRENHEIT = 90;
  private static final int MOST_OF_EITHER = 600;
  private static final int MOST_SENTENCES = 20;

  /** Below it a temperature is that of a cream or dough, not of an oven. */
  private static final int COOLEST_OVEN_CELSIUS = 100;

  private final Tongue tongue;
  private final Table gasMarks;

  public StepReader(Tongue tongue, Table gasMarks) {
    this.tongue = tongue;
    this.gasMarks = gasMarks;
  }

  /**
   * What a step says.
   *
   * @param low minutes, or null if it says no time or several
   * @param temperature such as 350 °F, or null
   */
  public record Step(
      @Nullable Double low,
      @Nullable Double high,
      @Nullable String temperature,
      @Nullable String hottest,
      @Nullable String station) {
    boolean saysSomething() {
      return low != null || temperature != null;
    }
  }

  private static boolean isOfAnOven(String temperature) {
    return Temperature.parse(temperature).celsius() >= COOLEST_OVEN_CELSIUS;
  }

  /**
   * Cuts a step of several sentences where the work moves on: to another station, or to a second
   * time or temperature.
   */
  public List<String> parts(String text) {
    List<String> parts = new ArrayList<>();
    StringBuilder part = new StringBuilder();
    Step before = new Step(null, null, null, null, null);
    for (String sentence : sentences(text)) {
      Step step = read(sentence);
      boolean elsewhere =
          before.station() != null
              && step.station() != null
              && !before.station().equals(step.station());
      if (elsewhere || (before.saysSomething() && step.saysSomething())) {
        parts.add(part.toString());
        part.setLength(0);
      }
      part.append(part.isEmpty() ? "" : " ").append(sentence);
      before = read(part.toString());
    }
    parts.add(part.toString());
    return parts;
  }

  private static List<String> sentences(String text) {
    List<String> sentences = new ArrayList<>();
    int start = 0;
    for (int i = 4; i + 2 < text.length(); i++) {
      boolean stop = text.charAt(i) == '.' && text.charAt(i + 1) == ' ';
      char next = text.charAt(i + 2);
      boolean begins = Character.isUpperCase(next) || Character.isDigit(next);
      boolean word =
          Character.isLetter(text.charAt(i - 1)) && Character.isLetter(text.charAt(i - 2));
      if (stop && begins && word && sentences.size() < MOST_SENTENCES) {
        sentences.add(text.substring(start, i + 1));
        start = i + 2;
      }
    }
    sentences.add(text.substring(start));
    return sentences;
  }

  public Step read(String text) {
    Phrase phrase = Phrase.of(text, tongue);
    List<double[]> times = new ArrayList<>();
    @Nullable String cool = null;
    @Nullable String hot = null;
    @Nullable String station = null;
    int at = 0;
    while (at < phrase.size()) {
      Tongue.@Nullable Match place = tongue.match("station", phrase, at);
      station = station == null && place != null ? place.value() : station;
      int behindTime = time(phrase, at, times);
      if (behindTime > at) {
        at = behindTime;
        continue;
      }
      String @Nullable [] temperature = temperature(phrase, at);
      if (temperature != null && cool == null) {
        cool = temperature[0];
        hot = temperature[1];
      }
      at++;
    }
    boolean one = times.size() == 1;
    boolean oven = station == null && cool != null && isOfAnOven(cool);
    return new Step(
        one ? times.get(0)[0] : null,
        one ? times.get(0)[1] : null,
        cool,
        hot,
        oven ? "oven" : station);
  }

  /**
   * Adds a time that begins at a token; tells the token behind it, or the same if there is none.
   */
  private int time(Phrase phrase, int at, List<double[]> times) {
    @Nullable Amount amount = new AmountReader(tongue, phrase).at(at);
    if (amount == null || amount.doubt() != null) {
      return at;
    }
    int unitAt = phrase.isDash(amount.next()) ? amount.next() + 1 : amount.next();
    double minutes = minutes(phrase, unitAt);
    if (minutes == 0) {
      return at;
    }
    double low = amount.low() * minutes;
    double high = amount.high() * minutes;
    int next = unitAt + 1;
    if (minutes == 60) {
      int more = tongue.behind("and", phrase, next);
      @Nullable Amount rest = new AmountReader(tongue, phrase).single(more);
      if (rest != null) {
        double unit = minutes(phrase, rest.next());
        boolean part = more > next && rest.low() < 1;
        boolean bare = more > next && unit == 0 && rest.low() < 60;
        if (unit == 1 || part || bare) {
          double add = part ? rest.low() * 60 : rest.low();
          low += add;
          high += add;
          next = unit == 1 ? rest.next() + 1 : rest.next();
        }
      }
    }
    times.add(new double[] {low, high});
    return next;
  }

  /** Minutes of the unit of time that stands at a token; 0 if none does. */
  private static double minutes(Phrase phrase, int at) {
    if (!phrase.isWord(at)) {
      return 0;
    }
    String word = phrase.text(at, at + 1);
    @Nullable String name = Units.standard().name(word);
    if (name == null || Units.standard().dimension(name) != Dimension.TIME) {
      return 0;
    }
    boolean letter = word.length() == 1 && !word.equals("h");
    return letter
        ? 0
        : Units.standard().unit(name, tamis.engine.quantity.Measures.US).factor() / 60;
  }

  private String @Nullable [] temperature(Phrase phrase, int at) {
    if (isGas(phrase, at)) {
      return gas(phrase, at);
    }
    if (!phrase.isNumber(at)) {
      return null;
    }
    @Nullable Amount amount = new AmountReader(tongue, phrase).at(at);
    if (amount == null) {
      return null;
    }
    int behind = amount.next();
    boolean degree = phrase.is(behind, "°") || phrase.is(behind, "º") || phrase.is(behind, "˚");
    String word = phrase.has(behind) ? phrase.folded(behind, behind + 1) : "";
    boolean spelled = word.startsWith("degree") || word.equals("deg") || word.equals("grad");
    int scaleAt = degree || spelled ? behind + 1 : behind;
    scaleAt = phrase.is(scaleAt, ".") ? scaleAt + 1 : scaleAt;
    String scale = phrase.isWord(scaleAt) ? phrase.folded(scaleAt, scaleAt + 1) : word;
    boolean fahrenheit = scale.equals("f") || scale.equals("fahrenheit") || scale.equals("℉");
    boolean celsius =
        scale.equals("c")
            || scale.equals("celsius")
            || scale.equals("℃")
            || scale.equals("centigrade");
    celsius |= (degree || spelled) && tongue.decimalComma() && !fahrenheit;
    boolean plausible =
        amount.high() <= MOST_OF_EITHER
            && amount.low() >= (fahrenheit ? HOT_FAHRENHEIT : HOT_CELSIUS);
    if ((!fahrenheit && !celsius) || !plausible) {
      return null;
    }
    String unit = fahrenheit ? " °F" : " °C";
    return new String[] {Figures.of(amount.low()) + unit, Figures.of(amount.high()) + unit};
  }

  private static boolean isGas(Phrase phrase, int at) {
    return phrase.isWord(at) && phrase.folded(at, at + 1).equals("gas");
  }

  private String @Nullable [] gas(Phrase phrase, int at) {
    int number = phrase.isNumber(at + 1) ? at + 1 : at + 2;
    if (!phrase.isNumber(number)) {
      return null;
    }
    @Nullable Row row = gasMarks.row(phrase.text(number, number + 1));
    return row == null
        ? null
        : new String[] {row.text("fahrenheit") + " °F", row.text("fahrenheit") + " °F"};
  }

  /** A stage of the formula; the whole step stays with it as its cue. */
  public Stage stage(String id, String text, Step step, List<String> after) {
    String title =
        text.length() > LONGEST_TITLE ? text.substring(0, LONGEST_TITLE - 1) + "…" : text;
    @Nullable TimeSpan duration =
        step.low() == null || step.high() == null
            ? null
            : TimeSpan.ofMinutes((step.low() + step.high()) / 2);
    @Nullable StageTarget target =
        step.temperature() == null
            ? null
            : new StageTarget(
                null, StageTarget.Measure.TEMPERATURE, step.temperature(), step.hottest(), null);
    String cue = text.length() > 2_000 ? text.substring(0, 1_999) + "…" : text;
    return new Stage(
        id, title, step.station(), duration, null, target, cue, after, List.of(), null, null, null);
  }
}
