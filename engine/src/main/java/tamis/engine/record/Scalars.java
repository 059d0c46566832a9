package tamis.engine.record;

import java.math.BigDecimal;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** Reads single values. */
final class Scalars {
  private static final Pattern COMMA_BETWEEN_DIGITS = Pattern.compile("(?<=\\d),(?=\\d)");
  private static final Pattern GROUPED =
      Pattern.compile("(?<![\\d.,])[1-9]\\d{0,2}(?:\\.\\d{3})+(?![\\d.])");
  private static final Pattern NUMBER =
      Pattern.compile("[-+]?(\\d+\\.?\\d*|\\.\\d+)([eE][-+]?\\d{1,6})?");

  private Scalars() {}

  /** The value, or null with the fault gathered. */
  static @Nullable Object read(
      RecordReader reader, Form form, Object tree, Place at, Faults faults) {
    if (form instanceof Form.Numeric number) {
      return number(reader, number, tree, at, faults);
    }
    if (form instanceof Form.Flag) {
      return flag(reader, tree, at, faults);
    }
    if (form instanceof Form.Text text) {
      return text(reader, text, tree, at, faults);
    }
    if (!(tree instanceof String words)) {
      return wrong(form, tree, at, faults);
    }
    if (form instanceof Form.Choice choice) {
      @Nullable Object constant = choice.words().get(words);
      return constant == null ? notAllowed(choice, words, at, faults) : constant;
    }
    return words;
  }

  private static @Nullable Object number(
      RecordReader reader, Form.Numeric form, Object tree, Place at, Faults faults) {
    if (tree instanceof Number number) {
      return at.gather(faults, () -> Numbers.convert(form, number));
    }
    if (reader.textual() && tree instanceof String text) {
      if (isGrouped(reader, text)) {
        return point(text, at, faults);
      }
      String plain = decimal(reader, text);
      if (NUMBER.matcher(plain).matches()) {
        long digits = plain.chars().filter(c -> c >= '0' && c <= '9').count();
        return digits > reader.limits().digits()
            ? tooManyDigits(reader, text, digits, at, faults)
            : at.gather(faults, () -> Numbers.convert(form, new BigDecimal(plain)));
      }
      if (plain.indexOf(',') >= 0) {
        return comma(text, at, faults);
      }
    }
    return wrong(form, tree, at, faults);
  }

  private static @Nullable Object flag(RecordReader reader, Object tree, Place at, Faults faults) {
    if (tree instanceof Boolean) {
      return tree;
    }
    if (reader.textual() && tree instanceof String text) {
      if (text.equals("true") || text.equals("yes")) {
        return true;
      }
      if (text.equals("false") || text.equals("no")) {
        return false;
      }
    }
    return wrong(new Form.Flag(), tree, at, faults);
  }

  private static @Nullable Object text(
      RecordReader reader, Form.Text form, Object tree, Place at, Faults faults) {
    if (tree instanceof String text) {
      if (isQuantity(form.type()) && isGrouped(reader, text)) {
        return point(text, at, faults);
      }
      String plain = decimal(reader, text);
      @Nullable Double number =
          form.ofNumber() != null && reader.textual() ? plainNumber(plain) : null;
      if (number != null && form.ofNumber() != null) {
        double value = number;
        var factory = form.ofNumber();
        return at.gather(faults, () -> Calls.ofNumber(factory, value));
      }
      return at.gather(faults, () -> Calls.parse(form.parse(), plain));
    }
    if (tree instanceof Number number) {
      var factory = form.ofNumber();
      if (factory != null) {
        return at.gather(faults, () -> Calls.ofNumber(factory, number.doubleValue()));
      }
      if (!isQuantity(form.type())) {
        return wrong(form, tree, at, faults);
      }
      faults.add(
          new Fault(
              FaultCode.NO_UNIT,
              at.toString(),
              number.toString(),
              Words.of(form),
              "a bare number has no unit: was " + number + ", must be " + Words.of(form)));
      return null;
    }
    return wrong(form, tree, at, faults);
  }

  /** A name or a time has no unit that could be missing. */
  private static boolean isQuantity(Class<?> type) {
    return !Reference.class.isAssignableFrom(type) && !type.getName().startsWith("java.");
  }

  private static @Nullable Double plainNumber(String text) {
    return NUMBER.matcher(text).matches() ? Double.valueOf(text) : null;
  }

  /** Where a comma is the decimal mark, 1.250 may be thousands or a decimal; 0.25 and 1.5 not. */
  private static boolean isGrouped(RecordReader reader, String text) {
    return reader.decimalComma() && GROUPED.matcher(text).find();
  }

  private static String decimal(RecordReader reader, String text) {
    return reader.decimalComma() ? COMMA_BETWEEN_DIGITS.matcher(text).replaceAll(".") : text;
  }

  private static @Nullable Object tooManyDigits(
      RecordReader reader, String text, long digits, Place at, Faults faults) {
    int most = reader.limits().digits();
    faults.add(
        new Fault(
            FaultCode.TOO_MANY_DIGITS,
            at.toString(),
            text,
            "at most " + most + " digits",
            "a number of " + digits + " digits; at most " + most + " are read"));
    return null;
  }

  private static @Nullable Object comma(String text, Place at, Faults faults) {
    faults.add(
        new Fault(
            FaultCode.STRAY_COMMA,
            at.toString(),
            text,
            "a decimal point, or decimal=comma",
            "`" + text + "` has a comma; write a decimal point, or say decimal=comma"));
    return null;
  }

  private static @Nullable Object point(String text, Place at, Faults faults) {
    faults.add(
        new Fault(
            FaultCode.STRAY_POINT,
            at.toString(),
            text,
            "a decimal comma and no grouping",
            "`"
                + text
                + "` has a point that may be a decimal point or group thousands; write a decimal"
                + " comma and no grouping"));
    return null;
  }

  private static @Nullable Object notAllowed(
      Form.Choice form, String given, Place at, Faults faults) {
    String allowed = String.join(", ", form.words().keySet());
    faults.add(
        new Fault(
            FaultCode.NOT_ALLOWED,
            at.toString(),
            given,
            allowed,
            "must be one of "
                + allowed
                + ", was "
                + given
                + Nearest.suggestion(given, form.words().keySet())));
    return null;
  }

  private static @Nullable Object wrong(Form form, Object tree, Place at, Faults faults) {
    String allowed = Words.of(form);
    String given = Words.given(tree);
    faults.add(
        new Fault(
            FaultCode.WRONG_TYPE,
            at.toString(),
            given,
            allowed,
            "must be " + allowed + ", was " + given));
    return null;
  }
}
