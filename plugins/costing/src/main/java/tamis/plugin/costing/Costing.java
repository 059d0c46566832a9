package tamis.plugin.costing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Repeats;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.price.Pack;
import tamis.engine.price.PricedBill;
import tamis.engine.price.Rates;
import tamis.engine.price.Shares;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Works out one cost. */
final class Costing {
  private final Cost.Input input;
  private final Notes notes = new Notes();
  private final Batch batch;
  private final CostSheet sheet;
  private final List<StageWork> work;
  private final StageCosts stages;
  private final @Nullable Rates rates;

  Costing(Cost.Input input, Kitchen kitchen) {
    this.input = input;
    this.batch = kitchen.batch(input.formula(), input.to());
    Faults faults = new Faults();
    List<Pack> given = new ArrayList<>();
    for (int i = 0; i < input.prices().size(); i++) {
      given.add(input.prices().get(i).offered("/prices/" + i));
    }
    this.sheet = CostSheet.of(batch, given, kitchen, notes, faults);
    this.work = Work.of(batch, input.to(), notes);
    this.stages = StageCosts.of(input, work, notes, faults);
    this.rates = faults.gather("", () -> Rates.of(input.currency(), input.rates(), used()));
    checkRise(faults);
    faults.refuseIfAny();
  }

  private List<Money> used() {
    List<Money> used = new ArrayList<>(sheet.used());
    used.addAll(stages.used());
    if (input.sellingPrice() != null) {
      used.add(input.sellingPrice());
    }
    return used;
  }

  private void checkRise(Faults faults) {
    if (input.priceRise() != null && !sheet.names().contains(input.priceRise().ingredient())) {
      String given = input.priceRise().ingredient();
      String allowed = String.join(", ", sheet.names().stream().distinct().toList());
      faults.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/priceRise/ingredient",
              given,
              allowed,
              "`" + given + "` is not bought for this formula; it is one of " + allowed));
    }
  }

  Answer<Cost.Result> answer() {
    batch.remarks().forEach(notes::add);
    List<String> missing = sheet.missing(notes);
    @Nullable Double portions = portions();
    @Nullable Double pieces = Repeats.pieces(batch.root(), input.to());
    double finished = batch.root().finished().typical();
    if (rates == null) {
      return Answer.of(unpriced(portions, pieces, finished, missing), notes);
    }
    CostLines lines = CostLines.of(sheet, stages, work, input, rates);
    cite(lines.lines());
    ProduceYields.remark(sheet.priced().rows(), notes);
    BigDecimal total = lines.total();
    Selling selling = Selling.of(input, portions, pieces, finished);
    @Nullable Money price = selling.price(input, lines.food(), total, rates);
    @Nullable Double left = selling.percent(total, price);
    List<StageRisk> atRisk =
        RiskTable.of(work, stages, lines.perIngredient(), grams(), total, rates).rows(rates);
    boolean partly = !missing.isEmpty() || stages.inPart();
    return Answer.of(
        new Cost.Result(
            lines.shown(),
            CostLines.figure(total),
            portions,
            per(total, portions),
            pieces,
            per(total, pieces),
            finished,
            per(total, finished / 1000),
            lines.sum(CostLine.Kind.INGREDIENT),
            lines.sum(CostLine.Kind.PACKAGING),
            input.labour() == null ? null : lines.sum(CostLine.Kind.LABOUR),
            input.energy() == null ? null : lines.sum(CostLine.Kind.ENERGY),
            lines.lines(),
            atRisk,
            price == null ? null : selling.priceFor(),
            price,
            selling.percent(lines.food(), price),
            left == null ? null : (Double) (100 - left),
            rise(lines, selling, price, portions),
            missing,
            partly ? incomplete(!missing.isEmpty(), stages.inPart()) : List.of()),
        notes);
  }

  private Map<Ingredient, Double> grams() {
    Map<Ingredient, Double> grams = new LinkedHashMap<>();
    batch.bill().forEach(row -> grams.put(row.ingredient(), row.grams().typical()));
    return grams;
  }

  private @Nullable Double portions() {
    if (input.to() != null && input.to().portions() != null) {
      return input.to().portions();
    }
    @Nullable Double written = batch.root().formula().yieldOrNothing().portions();
    return written == null ? null : (Double) (written * batch.factor());
  }

  private @Nullable Money per(BigDecimal total, @Nullable Double units) {
    return rates == null || units == null || units <= 0
        ? null
        : Shares.rounded(new Selling(PriceFor.BATCH, units).each(total), rates.currency());
  }

  private @Nullable Rise rise(
      CostLines lines, Selling selling, @Nullable Money price, @Nullable Double portions) {
    @Nullable PriceRise asked = input.priceRise();
    if (asked == null || rates == null) {
      return null;
    }
    BigDecimal part = BigDecimal.valueOf(asked.percent()).movePointLeft(2);
    BigDecimal more = lines.of(asked.ingredient()).multiply(part);
    BigDecimal food = lines.isFood(asked.ingredient()) ? lines.food().add(more) : lines.food();
    BigDecimal total = lines.total().add(more);
    Money shown = Shares.rounded(total, rates.currency());
    boolean target = input.sellingPrice() == null && price != null;
    return new Rise(
        asked.ingredient(),
        asked.percent(),
        shown,
        shown.minus(lines.shown()),
        lines.total().signum() == 0
            ? null
            : (Double) (more.doubleValue() / lines.total().doubleValue() * 100),
        per(total, portions),
        target ? selling.price(input, food, total, rates) : null,
        selling.percent(food, price));
  }

  /** Nothing at all has a price: there is no figure and no currency. */
  private Cost.Result unpriced(
      @Nullable Double portions, @Nullable Double pieces, double finished, List<String> missing) {
    if (input.priceFor() != null) {
      Selling.of(input, portions, pieces, finished);
    }
    return new Cost.Result(
        null,
        null,
        portions,
        null,
        pieces,
        null,
        finished,
        null,
        null,
        null,
        null,
        null,
        List.of(),
        List.of(),
        null,
        null,
        null,
        null,
        null,
        missing,
        incomplete(true, false));
  }

  private static List<String> incomplete(boolean prices, boolean time) {
    List<String> pointers =
        new ArrayList<>(
            List.of(
                "/total",
                "/unroundedTotal",
                "/perPortion",
                "/perPiece",
                "/perKilogram",
                "/atRisk",
                "/price",
                "/marginPercent",
                "/rise"));
    if (prices) {
      pointers.addAll(List.of("/ingredients", "/packaging", "/foodCostPercent"));
    }
    if (time) {
      pointers.add("/labour");
    }
    return pointers;
  }

  /** Prices, and what the grams of the bill rest on. */
  private void cite(List<CostLine> lines) {
    List<PricedBill.Row> rows = sheet.priced().rows();
    for (int i = 0; i < lines.size(); i++) {
      CostLine line = lines.get(i);
      @Nullable Pack pack = line.ingredient() == null ? null : pack(rows.get(i));
      if (pack != null && line.cost() != null) {
        String supplier = pack.supplier() == null ? "" : ", " + pack.supplier();
        notes.cite(
            "prices", pack.item(), pack.origin() + supplier, null, null, "/lines/" + i + "/cost");
      }
    }
    List<Ingredient> order = batch.bill().stream().map(Batch.BillRow::ingredient).toList();
    for (Cited source : batch.sources()) {
      for (String pointer : source.pointers()) {
        String[] steps = pointer.split("/", -1);
        if (steps.length == 4 && steps[1].equals("lines") && steps[3].equals("grams")) {
          int at = order.indexOf(batch.lines().get(Integer.parseInt(steps[2])).ingredient());
          notes.cite(
              source.table(),
              source.row(),
              source.source(),
              source.locator(),
              source.basis(),
              "/lines/" + at + "/grams");
        }
      }
    }
  }

  private static @Nullable Pack pack(PricedBill.Row row) {
    return row.offer() == null ? null : row.offer().pack();
  }
}
