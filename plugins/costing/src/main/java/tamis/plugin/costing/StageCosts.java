package tamis.plugin.costing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.price.Offer;
import tamis.engine.price.Rates;
import tamis.engine.quantity.Money;

/**
 * Hands and energy of each stage. Hands are paid for a stage that does not say {@code hands: false}
 * at its minutes, all repeats together; a total of energy is spread by the minutes of the stages.
 */
final class StageCosts {
  private static final BigDecimal MINUTES_PER_HOUR = BigDecimal.valueOf(60);
  private static final double JOULES_PER_KILOWATT_HOUR = 3_600_000;

  private final List<StageWork> work;
  private final Map<StageWork, Double> handMinutes = new LinkedHashMap<>();
  private final Map<StageWork, Money> ratePerHour = new LinkedHashMap<>();
  private final Map<StageWork, Double> kilowattHours = new LinkedHashMap<>();
  private final List<String> withoutTime = new ArrayList<>();
  private @Nullable Money energyPrice;
  private boolean labourInPart;

  private StageCosts(List<StageWork> work) {
    this.work = work;
  }

  static StageCosts of(Cost.Input input, List<StageWork> work, Notes notes, Faults faults) {
    StageCosts costs = new StageCosts(work);
    if (input.labour() != null) {
      costs.hands(input.labour(), notes, faults);
    }
    if (input.energy() != null) {
      costs.energy(input.energy(), faults);
    }
    return costs;
  }

  private void hands(Labour labour, Notes notes, Faults faults) {
    for (StageWork stage : work) {
      if (stage.hands()) {
        ratePerHour.put(stage, labour.ratePerHour());
        if (stage.minutes() != null) {
          handMinutes.put(stage, stage.minutes());
        }
      }
    }
    Set<StageWork> told = new HashSet<>();
    for (int i = 0; i < labour.stages().size(); i++) {
      Labour.StageTime time = labour.stages().get(i);
      @Nullable StageWork stage = named(time.stage(), "/labour/stages/" + i, told, faults);
      if (stage != null) {
        handMinutes.put(stage, time.duration().minutes());
        ratePerHour.put(
            stage, time.ratePerHour() == null ? labour.ratePerHour() : time.ratePerHour());
      }
    }
    ratePerHour.keySet().stream()
        .filter(stage -> !handMinutes.containsKey(stage))
        .forEach(stage -> withoutTime.add(stage.fullName()));
    List<String> unsaid =
        handMinutes.keySet().stream()
            .filter(stage -> stage.stage() != null && stage.stage().hands() == null)
            .filter(stage -> !told.contains(stage))
            .map(StageWork::fullName)
            .toList();
    if (!unsaid.isEmpty()) {
      notes.estimate(
          "hands-assumed",
          "/labour",
          "these stages do not say whether they need hands and are counted as if they did: "
              + String.join(", ", unsaid));
    }
    labourInPart = !withoutTime.isEmpty() || work.stream().anyMatch(stage -> stage.stage() == null);
    if (labourInPart) {
      notes.remark(
          "time-missing",
          "/labour",
          "labour is known in part only, without the time of "
              + (withoutTime.isEmpty()
                  ? "a formula without stages"
                  : String.join(", ", withoutTime)));
    }
  }

  private void energy(EnergyUse energy, Faults faults) {
    energyPrice = energy.pricePerKilowattHour();
    if (energy.total() != null) {
      spread(energy.total().joules() / JOULES_PER_KILOWATT_HOUR);
      return;
    }
    Set<StageWork> told = new HashSet<>();
    for (int i = 0; i < energy.stages().size(); i++) {
      EnergyUse.StageEnergy one = energy.stages().get(i);
      String at = "/energy/stages/" + i;
      @Nullable StageWork stage = named(one.stage(), at, told, faults);
      if (stage == null) {
        continue;
      }
      if (one.energy() != null) {
        kilowattHours.put(stage, one.energy().joules() / JOULES_PER_KILOWATT_HOUR);
      } else if (one.power() != null && stage.minutes() != null) {
        kilowattHours.put(stage, one.power().watts() / 1000 * stage.minutes() / 60);
      } else {
        faults.add(
            FaultCode.NO_SIZE,
            at + "/power",
            "stage `" + one.stage() + "` does not say how long it is; give its `energy`");
      }
    }
  }

  /** By minutes; where none are known all at the end. */
  private void spread(double total) {
    double all = work.stream().mapToDouble(StageCosts::minutesOf).sum();
    for (StageWork stage : work) {
      if (all > 0 && minutesOf(stage) > 0) {
        kilowattHours.put(stage, total * minutesOf(stage) / all);
      }
    }
    if (all <= 0) {
      kilowattHours.put(work.get(work.size() - 1), total);
    }
  }

  private static double minutesOf(StageWork stage) {
    return stage.minutes() == null ? 0 : stage.minutes();
  }

  private @Nullable StageWork named(String name, String at, Set<StageWork> told, Faults faults) {
    List<StageWork> found =
        work.stream()
            .filter(one -> one.stage() != null)
            .filter(one -> one.fullName().equals(name) || one.id().equals(name))
            .toList();
    if (found.size() == 1 && told.add(found.get(0))) {
      return found.get(0);
    }
    String allowed = String.join(", ", work.stream().map(StageWork::fullName).toList());
    FaultCode code =
        found.isEmpty()
            ? FaultCode.UNKNOWN_STAGE
            : found.size() == 1 ? FaultCode.DUPLICATE : FaultCode.INCONSISTENT;
    String why =
        found.isEmpty()
            ? "no stage `" + name + "` in this formula"
            : found.size() == 1
                ? "stage `" + name + "` stands twice"
                : "`" + name + "` is a stage of several parts; say formula/stage";
    faults.add(new Fault(code, at + "/stage", name, allowed, why));
    return null;
  }

  /** Money that is used here. */
  List<Money> used() {
    List<Money> used = new ArrayList<>(ratePerHour.values());
    if (energyPrice != null) {
      used.add(energyPrice);
    }
    return used;
  }

  /** Whether hands are asked for whose time is not known. */
  boolean inPart() {
    return labourInPart;
  }

  double handMinutes(StageWork stage) {
    return handMinutes.getOrDefault(stage, 0.0);
  }

  double handMinutes() {
    return handMinutes.values().stream().mapToDouble(one -> one).sum();
  }

  /**
   * Minutes of hands that a stage takes when it is done again: as {@code labour} tells them, else
   * its own length if it needs hands; null where that is not known.
   */
  @Nullable Double restartHands(StageWork stage) {
    @Nullable Double told = handMinutes.get(stage);
    if (told != null) {
      return told;
    }
    return stage.hands() ? stage.minutes() : (Double) 0.0;
  }

  double kilowattHours() {
    return kilowattHours.values().stream().mapToDouble(one -> one).sum();
  }

  /** What hands cost at this stage. */
  BigDecimal labour(StageWork stage, Rates rates) {
    @Nullable Money rate = ratePerHour.get(stage);
    return rate == null
        ? BigDecimal.ZERO
        : rates
            .amount(rate)
            .multiply(BigDecimal.valueOf(handMinutes(stage)), Offer.DIGITS)
            .divide(MINUTES_PER_HOUR, Offer.DIGITS);
  }

  /** What energy costs at this stage. */
  BigDecimal energy(StageWork stage, Rates rates) {
    return energyPrice == null
        ? BigDecimal.ZERO
        : rates
            .amount(energyPrice)
            .multiply(BigDecimal.valueOf(kilowattHours.getOrDefault(stage, 0.0)), Offer.DIGITS);
  }
}
