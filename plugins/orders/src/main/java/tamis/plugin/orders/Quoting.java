package tamis.plugin.orders;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Works out one quote; equal lines once. */
final class Quoting {
  /** A sum of parts that should be whole may fall short by this. */
  private static final double HARDLY_ANY = 1e-9;

  private final Quote.Input input;
  private final Kitchen kitchen;
  private final Offers offers;
  private final Faults faults = new Faults();
  private final Map<Asked, Quote.@Nullable Line> known = new HashMap<>();
  private final Map<String, @Nullable Declared> declared = new HashMap<>();
  private final Map<String, Double> times = new LinkedHashMap<>();
  private final Map<Asked, Double> factors = new HashMap<>();
  private final Map<String, Formula> formulas = new HashMap<>();

  /** What makes two lines equal. */
  private record Asked(String formula, Size size, int count) {}

  Quoting(Quote.Input input, Kitchen kitchen) {
    this.input = input;
    this.kitchen = kitchen;
    this.offers = new Offers(kitchen);
  }

  Answer<Quote.Result> answer() {
    List<Quote.Line> lines = new ArrayList<>();
    for (int i = 0; i < input.orders().size(); i++) {
      QuoteLine line = input.orders().get(i);
      Asked asked = new Asked(line.formula(), line.size(), line.number());
      if (!known.containsKey(asked)) {
        known.put(asked, line(asked, "/orders/" + i));
      }
      Quote.@Nullable Line quoted = known.get(asked);
      if (quoted != null) {
        lines.add(quoted.named(line.id()));
        times.merge(line.formula(), factors.getOrDefault(asked, 0.0), Double::sum);
      }
    }
    refuseCurrencies(lines);
    faults.refuseIfAny();
    lines = timed(lines);
    @Nullable String earliest = together(lines);
    Notes notes = new Notes();
    remark(lines, earliest, notes);
    return Answer.of(
        new Quote.Result(total(lines), lines, earliest, earliest == null ? null : inTime(earliest)),
        notes);
  }

  private Quote.@Nullable Line line(Asked asked, String at) {
    @Nullable Batch batch = batch(asked, at);
    if (batch == null) {
      return null;
    }
    FormulaRef formula = FormulaRef.parse(asked.formula());
    if (!declared.containsKey(asked.formula())) {
      declared.put(asked.formula(), declared(formula, at));
    }
    @Nullable Declared allergens = declared.get(asked.formula());
    if (allergens == null) {
      return null;
    }
    formulas.put(asked.formula(), batch.root().formula());
    factors.put(asked, batch.factor() * asked.count());
    @Nullable Money each = offers.price(asked.formula(), batch);
    return new Quote.Line(
        asked.formula(),
        asked.count(),
        each,
        each == null ? null : each.times(BigDecimal.valueOf(asked.count())),
        each == null ? null : each.currency().getCurrencyCode(),
        portions(asked, batch),
        allergens.contains(),
        allergens.mayContain(),
        null,
        null);
  }

  /** The batch of one; a fault says no more than that this cannot be had. */
  private @Nullable Batch batch(Asked asked, String at) {
    try {
      if (Ingredient.isId(asked.formula()) && offers.isOnOffer(asked.formula())) {
        return asked.size().batch(FormulaRef.parse(asked.formula()), kitchen);
      }
    } catch (Refusal refusal) {
      if (refusal.faults().stream().noneMatch(f -> f.code() == FaultCode.UNKNOWN_FORMULA)) {
        String words = asked.size().words();
        faults.add(
            new Fault(
                FaultCode.NO_SIZE,
                at,
                words,
                "another size",
                "`" + asked.formula() + "` is not to be had in this size: " + words));
        return null;
      }
    }
    faults.add(
        new Fault(
            FaultCode.NOT_ALLOWED,
            at + "/formula",
            asked.formula(),
            "what the shop offers",
            "`" + asked.formula() + "` is not on offer"));
    return null;
  }

  /** Without its allergens nothing is quoted: none named would be read as none there. */
  private @Nullable Declared declared(FormulaRef formula, String at) {
    try {
      return Declared.of(formula, input.regimeOrEu(), kitchen);
    } catch (Refusal refusal) {
      faults.add(
          FaultCode.IMPOSSIBLE,
          at + "/formula",
          "the allergens of `" + formula + "` cannot be told now; ask the shop");
      return null;
    }
  }

  private static @Nullable Double portions(Asked asked, Batch batch) {
    if (asked.size().portions() != null) {
      return asked.size().portions() * asked.count();
    }
    @Nullable Double written = batch.root().formula().yieldOrNothing().portions();
    return written == null
        ? null
        : (Double) Math.floor(written * batch.factor() * asked.count() + HARDLY_ANY);
  }

  /** Lines with their time: all that is asked of one thing is made together. */
  private List<Quote.Line> timed(List<Quote.Line> lines) {
    Map<String, @Nullable String> earliest = new HashMap<>();
    times.forEach((formula, factor) -> earliest.put(formula, earliest(formula, factor)));
    return lines.stream().map(line -> line.at(earliest.get(line.formula()))).toList();
  }

  /** When it is done if it is begun now, one cook, nothing else in hand. */
  private @Nullable String earliest(String name, double factor) {
    return finish(Map.of(name, factor));
  }

  /** When all of it is done: the same cook makes one thing and the other. */
  private @Nullable String together(List<Quote.Line> lines) {
    if (lines.isEmpty() || lines.stream().anyMatch(line -> line.earliest() == null)) {
      return null;
    }
    return times.size() == 1 ? lines.get(0).earliest() : finish(times);
  }

  private @Nullable String finish(Map<String, Double> factors) {
    if (input.asOf() == null) {
      return null;
    }
    List<Object> wanted = new ArrayList<>();
    for (Map.Entry<String, Double> one : factors.entrySet()) {
      @Nullable Formula formula = formulas.get(one.getKey());
      if (formula == null) {
        return null;
      }
      To to = Times.of(formula, one.getValue());
      wanted.add(Written.map("formula", one.getKey(), "to", Written.of(to)));
    }
    try {
      return Found.of(
              kitchen
                  .calculate(
                      "timeline",
                      Written.map("formulas", wanted, "startAt", input.asOf().toString()))
                  .result())
          .text("finish");
    } catch (Refusal notToBeTold) {
      return null;
    }
  }

  private static LocalDateTime time(String text) {
    return LocalDateTime.parse(text);
  }

  private @Nullable Boolean inTime(String earliest) {
    return input.due() == null ? null : (Boolean) !time(earliest).isAfter(input.due());
  }

  private void refuseCurrencies(List<Quote.Line> lines) {
    List<String> currencies =
        lines.stream().map(Quote.Line::currency).filter(one -> one != null).distinct().toList();
    if (currencies.size() > 1) {
      faults.add(
          FaultCode.INCONSISTENT,
          "/orders",
          "these are sold in "
              + String.join(" and ", currencies)
              + "; ask for each currency by itself");
    }
  }

  private static @Nullable Money total(List<Quote.Line> lines) {
    @Nullable Money total = null;
    for (Quote.Line line : lines) {
      if (line.price() == null) {
        return null;
      }
      total = total == null ? line.price() : total.plus(line.price());
    }
    return total == null ? null : Shares.rounded(total.amount(), total.currency());
  }

  private void remark(List<Quote.Line> lines, @Nullable String earliest, Notes notes) {
    notes.caution(
        "allergens-as-documented",
        "",
        "allergens are those that the ingredients' documents name; traces in the bakery are not"
            + " known: ask the shop before you eat if any matters to you");
    if (lines.stream().anyMatch(line -> line.price() == null)) {
      notes.remark("price-on-request", "/orders", "a line without a price is priced on request");
    }
    if (input.asOf() == null) {
      return;
    }
    if (earliest == null) {
      notes.remark("time-on-request", "/orders", "what has no earliest time is timed on request");
    } else {
      notes.estimate(
          "earliest-estimated",
          "/asOf",
          "the earliest time takes the bakery to begin at once; the shop confirms it");
    }
  }
}
