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

  private record Part(int start, int end, int amounts) {}

  private Divided(String text) {
    this.text = text;
  }

  public static Divided of(String text) {
    Divided divided = new Divided(text);
    divided.divide();
    return divided;
  }

  private void divide() {
    int start = 0;
    int amounts = 0;
    int at = 0;
    while (at < text.length()) {
      int end = text.indexOf('\n', at);
      end = end < 0 ? text.length() : end;
      String line = text.substring(at, end).strip();
      if (isRule(line) || text.charAt(at) == '\f') {
        add(new Part(start, at, amounts));
        start = at;
        amounts = 0;
      }
      amounts += beginsWithAmount(line) ? 1 : 0;
      at = end + 1;
    }
    add(new Part(start, text.length(), amounts));
  }

  private void add(Part part) {
    int last = parts.size() - 1;
    boolean alone = part.amounts() >= FEWEST_AMOUNTS;
    if (last >= 0 && !(alone && parts.get(last).amounts() >= FEWEST_AMOUNTS)) {
      Part before = parts.remove(last);
      parts.add(new Part(before.start(), part.end(), before.amounts() + part.amounts()));
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

  /** How many recipes there are. */
  public int count() {
    return parts.size();
  }

  /**
   * One of the recipes, from 1, the text before it left blank: so numbers and places of its lines
   * are those of the whole. A rule before it goes.
   */
  public String part(int number) {
    Part part = parts.get(number - 1);
    if (parts.size() == 1) {
      return text;
    }
    int from = part.start();
    int end = text.indexOf('\n', from);
    boolean rule = end >= 0 && isRule(text.substring(from, end).strip());
    from = rule ? end : from;
    StringBuilder blank = new StringBuilder(part.end());
    for (int i = 0; i < from; i++) {
      char c = text.charAt(i);
      blank.append(c == '\n' || c == '\r' ? c : ' ');
    }
    return blank.append(text, from, part.end()).toString();
  }
}
