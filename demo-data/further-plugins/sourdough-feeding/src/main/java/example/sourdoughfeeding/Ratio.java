package example.sourdoughfeeding;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Parts of flour and water for one part of starter. */
record Ratio(double flour, double water) {
  private static final String NUMBER = "\\s*(\\d{1,4}(?:\\.\\d{1,4})?)\\s*";
  private static final Pattern FORM = Pattern.compile(NUMBER + ":" + NUMBER + ":" + NUMBER);

  static Ratio parse(String text) {
    Matcher matcher = FORM.matcher(text);
    if (!matcher.matches()) {
      throw refused(
          text, FaultCode.NOT_ALLOWED, "the feeding `" + text + "` is not told as 1:2:2, starter to flour to water");
    }
    double starter = Double.parseDouble(matcher.group(1));
    double flour = Double.parseDouble(matcher.group(2));
    double water = Double.parseDouble(matcher.group(3));
    if (starter <= 0 || flour <= 0 || water <= 0) {
      throw refused(
          text, FaultCode.OUT_OF_BOUNDS, "in `" + text + "` each of starter, flour and water must be more than 0");
    }
    Ratio ratio = new Ratio(flour / starter, water / starter);
    if (ratio.flour < 0.25 || ratio.flour > 20) {
      throw refused(
          text,
          FaultCode.OUT_OF_BOUNDS,
          "`" + text + "` feeds one part of starter with " + said(ratio.flour)
              + " of flour; between 0.25 and 20 is possible");
    }
    if (ratio.water / ratio.flour < 0.4 || ratio.water / ratio.flour > 2) {
      throw refused(
          text,
          FaultCode.OUT_OF_BOUNDS,
          "`" + text + "` gives " + said(ratio.water / ratio.flour)
              + " of water to one of flour; between 0.4 and 2 is possible");
    }
    return ratio;
  }

  private static String said(double number) {
    return String.format(java.util.Locale.ROOT, "%.3g", number);
  }

  private static Refusal refused(String given, FaultCode code, String message) {
    return new Refusal(
        new Fault(code, "/ratio", given, "1:2:2, starter to flour to water", message));
  }

  double growth() {
    return 1 + flour + water;
  }
}
