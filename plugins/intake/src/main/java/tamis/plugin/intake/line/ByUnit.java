package tamis.plugin.intake.line;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.name.NameFinder;

/**
 * What the unit tells of a name that leaves its food open: a cake of yeast is of fresh yeast,
 * leaves of gelatine are no powder, a pod of vanilla is no extract.
 */
record ByUnit(NameFinder finder) {
  /** "Gousse" is of garlic, too. */
  private static final Set<String> PODS = Set.of("pod", "clove");

  private static final Set<String> CAKES = Set.of("cake", "cube", "block");

  /**
   * A food that a unit tells from others.
   *
   * @param among what the name leaves open
   * @param assumed what is taken for granted, or null
   */
  private record Told(Set<String> among, Set<String> units, String id, @Nullable String assumed) {}

  private static final List<Told> TOLD =
      List.of(
          new Told(
              Set.of("yeast-fresh", "yeast-instant"),
              CAKES,
              "yeast-fresh",
              "fresh yeast assumed, as it comes in cakes"),
          new Told(Set.of("gelatine-leaf"), Set.of("leaf", "sheet"), "gelatine-leaf", null),
          new Told(
              Set.of("gelatine-powder", "gelatine-leaf"),
              Set.of("tsp", "tbsp", "dsp"),
              "gelatine-powder",
              "powder assumed, as it is measured by the spoon"),
          new Told(Set.of("vanilla-bean"), PODS, "vanilla-bean", null));

  static boolean isCake(Measure measure) {
    return CAKES.contains(String.valueOf(measure.unit()));
  }

  void check(Gathered gathered) {
    @Nullable Found found = gathered.found();
    @Nullable Measure measure = gathered.measure();
    if (found == null || measure == null || !found.equals(finder.find(gathered.asWritten()))) {
      return; // a name among more words is none of them for certain
    }
    boolean vanilla = found.isId("vanilla-extract") && found.assumed() != null;
    List<String> ids = vanilla ? List.of("vanilla-bean") : found.candidates();
    for (Told told : TOLD) {
      if (ids.containsAll(told.among()) && told.units().contains(String.valueOf(measure.unit()))) {
        gathered.name(gathered.asWritten(), finder.byId(told.id(), told.assumed()));
        if (told.units().equals(PODS)) {
          gathered.recount(measure.counted("pod", measure.size(), measure.next()));
        }
        return;
      }
    }
  }
}
