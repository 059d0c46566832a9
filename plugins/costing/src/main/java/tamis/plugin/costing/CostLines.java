package tamis.plugin.costing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.Offer;
import tamis.engine.price.PricedBill;
import tamis.engine.price.Rates;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;

/** The lines of a cost, exact and as they are shown. Ingredients come first, in bill order. */
final class CostLines {
  /** Digits after the point of a figure that is shown beside the rounded one. */
  private static final int SHOWN_DIGITS = 10;

  private final Rates rates;
  private final List<Draft> drafts = new ArrayList<>();
  private final Map<Ingredient, BigDecimal> perIngredient = new LinkedHashMap<>();
  private @Nullable Shares shares;

  /** A line without its share of the rounded total. */
  private record Draft(
      CostLine.Kind kind,
      String name,
      PricedBill.@Nullable Row row,
      @Nullable Offer offer,
      @Nullable Double count,
      @Nullable Double minutes,
      @Nullable Double kilowattHours,
      @Nullable BigDecimal exact) {}

  private CostLines(Rates rates) {
    this.rates = rates;
  }

  static CostLines of(
      CostSheet sheet, StageCosts stages, List<StageWork> work, Cost.Input input, Rates rates) {
    CostLines lines = new CostLines(rates);
    for (PricedBill.Row row : sheet.priced().rows()) {
      @Nullable BigDecimal cost = sheet.isAsNeeded(row.ingredient()) ? null : row.cost();
      @Nullable BigDecimal exact = lines.converted(cost, row.offer());
      if (exact != null) {
        lines.perIngredient.put(row.ingredient(), exact);
      }
      lines.drafts.add(
          new Draft(
              CostLine.Kind.INGREDIENT,
              row.ingredient().title("en"),
              row,
              row.offer(),
              null,
              null,
              null,
              exact));
    }
    for (CostSheet.Item item : sheet.items()) {
      lines.drafts.add(
          new Draft(
              CostLine.Kind.PACKAGING,
              item.packaging().item(),
              null,
              item.offer(),
              item.count(),
              null,
              null,
              lines.converted(item.cost(), item.offer())));
    }
    lines.work(stages, work, input);
    lines.shares =
        Shares.of(
            lines.drafts.stream().map(draft -> zeroIfNull(draft.exact())).toList(),
            rates.currency());
    return lines;
  }

  private void work(StageCosts stages, List<StageWork> work, Cost.Input input) {
    BigDecimal labour = BigDecimal.ZERO;
    BigDecimal energy = BigDecimal.ZERO;
    for (StageWork stage : work) {
      labour = labour.add(stages.labour(stage, rates));
      energy = energy.add(stages.energy(stage, rates));
    }
    if (input.labour() != null) {
      double minutes = stages.handMinutes();
      drafts.add(
          new Draft(CostLine.Kind.LABOUR, "labour", null, null, null, minutes, null, labour));
    }
    if (input.energy() != null) {
      double used = stages.kilowattHours();
      drafts.add(new Draft(CostLine.Kind.ENERGY, "energy", null, null, null, null, used, energy));
    }
  }

  private @Nullable BigDecimal converted(@Nullable BigDecimal cost, @Nullable Offer offer) {
    return cost == null || offer == null ? null : rates.amount(cost, offer.money().currency());
  }

  private static BigDecimal zeroIfNull(@Nullable BigDecimal amount) {
    return amount == null ? BigDecimal.ZERO : amount;
  }

  private Shares shares() {
    if (shares == null) {
      throw new IllegalStateException("lines are shared out when they are made");
    }
    return shares;
  }

  Map<Ingredient, BigDecimal> perIngredient() {
    return perIngredient;
  }

  /** The exact total. */
  BigDecimal total() {
    return drafts.stream()
        .map(draft -> zeroIfNull(draft.exact()))
        .reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /** The total as it is shown. */
  Money shown() {
    return shares().total();
  }

  /** The exact cost of the ingredients. */
  BigDecimal food() {
    return perIngredient.values().stream().reduce(BigDecimal.ZERO, BigDecimal::add);
  }

  /** What all shown lines of a kind come to. */
  Money sum(CostLine.Kind kind) {
    Money sum = Money.zero(rates.currency());
    for (int i = 0; i < drafts.size(); i++) {
      if (drafts.get(i).kind() == kind) {
        sum = sum.plus(shares().parts().get(i));
      }
    }
    return sum;
  }

  /** The exact cost of what goes by this name, or is bought as it. */
  BigDecimal of(String name) {
    BigDecimal sum = BigDecimal.ZERO;
    for (Draft draft : drafts) {
      if (draft.exact() != null && goesBy(draft, name)) {
        sum = sum.add(draft.exact());
      }
    }
    return sum;
  }

  boolean isFood(String name) {
    return drafts.stream().anyMatch(draft -> draft.row() != null && goesBy(draft, name));
  }

  private static boolean goesBy(Draft draft, String name) {
    PricedBill.@Nullable Row row = draft.row();
    return row == null
        ? draft.kind() == CostLine.Kind.PACKAGING && draft.name().equals(name)
        : bought(row).id().equals(name) || row.ingredient().id().equals(name);
  }

  private static Ingredient bought(PricedBill.Row row) {
    return row.boughtAs() == null ? row.ingredient() : row.boughtAs();
  }

  List<CostLine> lines() {
    BigDecimal total = total();
    List<CostLine> lines = new ArrayList<>();
    for (int i = 0; i < drafts.size(); i++) {
      lines.add(line(drafts.get(i), shares().parts().get(i), total));
    }
    return lines;
  }

  private static CostLine line(Draft draft, Money share, BigDecimal total) {
    PricedBill.@Nullable Row row = draft.row();
    @Nullable Offer offer = draft.offer();
    @Nullable BigDecimal exact = draft.exact();
    return new CostLine(
        draft.kind(),
        row == null ? null : row.ingredient().id(),
        draft.name(),
        row == null ? null : (Double) row.grams(),
        row == null || offer == null ? null : (Double) offer.purchased(row.boughtGrams()),
        row == null || row.boughtAs() == null ? null : row.boughtAs().id(),
        draft.count(),
        draft.minutes(),
        draft.kilowattHours(),
        exact == null ? null : share,
        exact == null ? null : figure(exact),
        exact == null || total.signum() == 0
            ? null
            : (Double) (exact.doubleValue() / total.doubleValue() * 100),
        offer == null ? null : offer.pack().pack().text(),
        offer == null ? null : offer.money(),
        offer == null ? null : offer.pack().supplier());
  }

  /** With ten digits after the point: what is worked with has more. */
  static BigDecimal figure(BigDecimal exact) {
    BigDecimal figure = exact.setScale(SHOWN_DIGITS, RoundingMode.HALF_UP);
    return figure.signum() == 0 ? BigDecimal.ZERO : figure.stripTrailingZeros();
  }
}
