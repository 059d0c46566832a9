package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.List;
import tamis.engine.quantity.VulgarFractions;

/**
 * Divides a text of several recipes at rules, lines of nothing but three or more {@code - = * _} or
 * {@code #}, and at page breaks. A part without lines that begin with an amount is no recipe of its
 * own and stays with the one before it.
 */
public final class Divided {
  private static final int SHORTEST_RULE = 3;
  private static final int FEWEST_AMOUNTS = 2;

  private final String text;
  private final List<Part> parts = new ArrayList<>();

  /**
   * @param line number of its first line
   */
  private record Part(int start, int end, int amounts, int line) {}

  private Divided(String text) {
    this.text = text;
  }

  public static Opened opened(String text) {
    Divided divided = new Divided(text);
    divided.divide();
    return new Opened(divided.parts.size(), divided::recipe, List.of());
  }

  private void divide() {
    int start = 0;
    int amounts = 0;
    int line = 1;
    int at = 0;
    while (at < text.length()) {
      int end = text.indexOf('\n', at);
      end = end < 0 ? text.length() : end;
      String words = text.substring(at, end).strip();
      if (isRule(words) || text.charAt(at) == '\f') {
        add(new Part(start, at, amounts, line));
        line += SourceLine.breaks(text, start, at);
        start = at;
        amounts = 0;
      }
      amounts += beginsWithAmount(words) ? 1 : 0;
      at = end + 1;
    }
    add(new Part(start, text.length(), amounts, line));
  }

  private void add(Part part) {
    int last = parts.size() - 1;
    boolean alone = part.amounts() >= FEWEST_AMOUNTS;
    if (last >= 0 && !(alone && parts.get(last).amounts() >= FEWEST_AMOUNTS)) {
      Part before = parts.remove(last);
      parts.add(
          new Part(before.start(), part.end(), before.amounts() + part.amounts(), before.line()));
    } else {
      parts.add(part);
    }
  }

  private static boolean isRule(String line) {
    if (line.length() < SHORTEST_RULE || "-=*_#".indexOf(line.charAt(0)) < 0) {
      return false;
    }
    return line.chars().allMatch(c -> c == line.charAt(0) || c == ' ');
  }

  /** A figure first, but not the number of a step. */
  private static boolean beginsWithAmount(String line) {
    int at = 0;
    while (at < line.length() && "-*•· ".indexOf(line.charAt(at)) >= 0) {
      at++;
    }
    int digits = at;
    while (digits < line.length() && Character.isDigit(line.charAt(digits))) {
      digits++;
    }
    boolean fraction = at < line.length() && VulgarFractions.is(line.charAt(at));
    boolean step = digits < line.length() && ".)".indexOf(line.charAt(digits)) >= 0;
    return fraction || (digits > at && !step);
  }

  /** One of the recipes, from 1; its lines have the numbers and places of the whole. */
  private Source recipe(int number) {
    Part part = parts.get(number - 1);
    int from = part.start();
    int end = text.indexOf('\n', from);
    boolean rule = parts.size() > 1 && end >= 0 && isRule(text.substring(from, end).strip());
    int start = rule ? end : from; // a rule before it goes
    return Source.page(SourceLine.of(text, start, part.end(), part.line()), null, parts.size());
  }
}
