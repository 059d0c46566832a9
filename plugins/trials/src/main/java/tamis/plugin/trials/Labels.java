package tamis.plugin.trials;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
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
import tamis.engine.formula.ShelfLife;
import tamis.engine.formula.To;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.PlainValues;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Works out the labels of one formula. */
final class Labels {
  private static final String ALLERGENS = "allergens";
  private static final String USUAL_REGIME = "EU";

  private final ShelfLifeLabel.Input input;
  private final Kitchen kitchen;
  private final Formula formula;
  private final Batch batch;
  private final Notes notes = new Notes();

  Labels(ShelfLifeLabel.Input input, Kitchen kitchen) {
    this.input = input;
    this.kitchen = kitchen;
    this.formula = kitchen.formula(input.formula());
    Faults faults = new Faults();
    faults.gather("", this::keeping);
    @Nullable Batch made = faults.gather("", this::made);
    faults.refuseIfAny();
    if (made == null) {
      throw new IllegalStateException("a batch without faults is there");
    }
    this.batch = made;
  }

  /** Where the box is told, a formula wholly in percent needs no size: only its parts are asked. */
  private Batch made() {
    try {
      return kitchen.batch(input.formula(), input.to());
    } catch (Refusal refusal) {
      boolean sizeless =
          refusal.faults().stream().allMatch(fault -> fault.code() == FaultCode.NO_SIZE);
      if (input.quantity() == null || input.to() != null || !sizeless) {
        throw refusal;
      }
      return kitchen.batch(input.formula(), To.ofFlour(Mass.ofGrams(100)));
    }
  }

  Answer<ShelfLifeLabel.Result> answer() {
    @Nullable Record found = allergens();
    @Nullable String contains = found == null ? null : Asked.text(found, "statement");
    @Nullable String mayContain = found == null ? null : Asked.text(found, "mayContainStatement");
    String quantity = quantity();
    List<ShelfLifeLabel.Label> labels = new ArrayList<>();
    for (ShelfLife keeps : keeping()) {
      partsKeepShorter(batch.root(), keeps);
      labels.add(label(keeps, quantity, contains, mayContain));
    }
    notes.estimate(
        "keeping-time-as-written",
        "/formula",
        "use by is when it was made plus the keeping time that the formula tells; nothing was"
            + " tested, and made means finished and cooled at once");
    notes.caution(
        "keeping-time",
        "/made",
        "Food can be unfit before this day if it stood warm, was opened or was handled on. Local"
            + " codes may set a shorter time; they and licensed practice decide.");
    return Answer.of(
        new ShelfLifeLabel.Result(
            formula.name(), input.made().toString(), quantity, contains, mayContain, labels),
        notes);
  }

  private List<ShelfLife> keeping() {
    if (formula.shelfLife().isEmpty()) {
      throw Refusal.of(
          FaultCode.MISSING,
          "/formula",
          formula.name() + " tells no keeping time (`shelfLife`), and none is made up here");
    }
    Temperature at = input.at();
    if (at == null) {
      return formula.shelfLife();
    }
    List<ShelfLife> there =
        formula.shelfLife().stream().filter(one -> one.at().equals(at)).toList();
    if (there.isEmpty()) {
      List<String> told = formula.shelfLife().stream().map(one -> one.at().toString()).toList();
      throw new Refusal(
          new Fault(
              FaultCode.NO_SUCH_VALUE,
              "/at",
              at.toString(),
              String.join(", ", told),
              formula.name()
                  + " tells no keeping time at "
                  + at
                  + "; it does at "
                  + String.join(", ", told)));
    }
    return there;
  }

  private ShelfLifeLabel.Label label(
      ShelfLife keeps, String quantity, @Nullable String contains, @Nullable String mayContain) {
    MadeAt made = input.made();
    LocalDateTime useBy = made.at().plus(Duration.ofSeconds((long) keeps.keeps().seconds()));
    List<String> lines = new ArrayList<>();
    lines.add(formula.name());
    lines.add("Quantity: " + quantity);
    lines.add("Made: " + made.words(made.at()));
    lines.add("Keep at: " + keeps.at());
    lines.add("Use by: " + made.words(useBy));
    lines.add(contains == null ? "Allergens: not known here" : contains);
    if (mayContain != null) {
      lines.add(mayContain);
    }
    return new ShelfLifeLabel.Label(
        keeps.at().celsius(), keeps.keeps().seconds() / 3600, useBy, String.join("\n", lines));
  }

  private String quantity() {
    if (input.quantity() != null) {
      return input.quantity().toString();
    }
    batch.remarks().forEach(remark -> notes.add(remark));
    return Words.amount(batch.root().finished().typical(), "g");
  }

  /**
   * What a part keeps shorter, the whole does not keep longer. Nothing keeps longer for being
   * warmer, so what a part tells for a lower temperature bounds it here, too; what it tells for a
   * higher one says nothing.
   */
  private void partsKeepShorter(Batch.Part within, ShelfLife whole) {
    for (Batch.Part part : within.parts()) {
      List<ShelfLife> told =
          part.formula().shelfLife().stream()
              .filter(own -> own.at().compareTo(whole.at()) <= 0)
              .toList();
      told.stream()
          .min(Comparator.comparing(ShelfLife::keeps))
          .filter(own -> own.keeps().compareTo(whole.keeps()) < 0)
          .ifPresent(own -> keepsShorter(part, own, whole));
      if (told.isEmpty()) {
        notes.remark(
            "part-keeping-time-not-told",
            "/formula",
            part.formula().name()
                + " in it tells no keeping time at "
                + whole.at()
                + " or colder, so nothing was compared with it");
      }
      partsKeepShorter(part, whole);
    }
  }

  private void keepsShorter(Batch.Part part, ShelfLife own, ShelfLife whole) {
    notes.caution(
        "part-keeps-shorter",
        "/formula",
        part.formula().name()
            + " in it keeps "
            + days(own.keeps())
            + " at "
            + own.at()
            + " by its own formula, less than the "
            + days(whole.keeps())
            + " told here"
            + (own.at().equals(whole.at()) ? "" : " for " + whole.at()));
  }

  private static String days(TimeSpan span) {
    return Words.amount(span.seconds() / 86_400, "d");
  }

  private @Nullable Record allergens() {
    Map<String, Object> question = new LinkedHashMap<>();
    question.put("formula", PlainValues.ofEither(input.formula()));
    question.put("regime", input.regime() == null ? USUAL_REGIME : input.regime());
    if (input.to() != null) {
      question.put("to", PlainValues.of(input.to()));
    }
    if (input.regime() == null) {
      notes.remark("regime-assumed", "/regime", "allergens are named by the EU list");
    }
    @Nullable Answer<?> answer = Asked.of(kitchen, ALLERGENS, question);
    if (answer == null) {
      notes.caution(
          "allergens-not-known",
          "/formula",
          "no calculation `allergens` is loaded: the label says nothing of allergens");
      return null;
    }
    for (Remark remark : answer.remarks()) {
      notes.add(remark);
    }
    for (Cited one : answer.sources()) {
      if (one.pointers().contains("/statement")) {
        notes.cite(one.table(), one.row(), one.source(), one.locator(), one.basis(), "/allergens");
      }
    }
    return answer.result();
  }
}
