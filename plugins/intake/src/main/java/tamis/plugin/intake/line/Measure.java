package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * An amount with its unit.
 *
 * @param unit symbol of a unit, or name of a thing that is counted; null if there is none
 * @param container whether the unit is a thing that is counted, of no size by itself
 * @param size what one of the things holds, such as 14 oz; null if that is not said
 * @param manner how it is filled or how near it is: heaping, scant, about
 */
public record Measure(
    Amount amount,
    @Nullable String unit,
    boolean container,
    @Nullable Measure size,
    List<String> manner,
    int next) {

  public Measure {
    manner = List.copyOf(manner);
  }

  public double low() {
    return amount.low();
  }

  public double high() {
    return amount.high();
  }

  Measure behind(int place) {
    return new Measure(amount, unit, container, size, manner, place);
  }

  Measure counted(String thing, @Nullable Measure ofSize, int place) {
    return new Measure(amount, thing, true, ofSize, manner, place);
  }

  Measure of(Amount other, int place) {
    return new Measure(other, unit, container, size, manner, place);
  }

  Measure filled(List<String> more) {
    List<String> all = new ArrayList<>(more);
    all.addAll(manner);
    return new Measure(amount, unit, container, size, all, next);
  }
}
