package tamis.plugin.intake.line;

import java.util.Set;

/** Words behind or before a number that is no amount of a food: lengths, times, warmth, shares. */
public final class Innocent {
  private static final Set<String> NO_FOOD =
      Set.of(
          ("minute minutes min mins hour hours hr hrs h day days week weeks month months second"
                  + " seconds year years time times inch inches in cm mm centimetre centimetres"
                  + " centimeter centimeters millimetre \" ″ ' degree degrees f c fahrenheit"
                  + " celsius percent proof minuten stunde stunden std tag tage mal grad heure heures"
                  + " jour jours fois degrés minuti ora ore giorni volte gradi minuto minutos hora"
                  + " horas días veces grados d × x")
              .split(" "));

  private static final Set<String> LENGTHS = Set.of("inch", "inches", "in", "\"", "″", "cm", "mm");

  private static final Set<String> PIECES =
      Set.of(
          ("piece pieces part parts wedge wedges strip strips round rounds layer layers length"
                  + " lengths half halves third thirds quarter quarters chunk chunks portion portions"
                  + " segment segments cube cubes slice slices stücke stücken teile morceaux parties"
                  + " pezzi parti trozos partes")
              .split(" "));

  private static final Set<String> BEFORE =
      Set.of(
          ("into about approx approximately around ca circa from type typ tipo no nr page seite"
                  + " size number recipe note vom environ unas t #")
              .split(" "));

  private Innocent() {}

  public static boolean isMeasureOfNoFood(String folded) {
    return NO_FOOD.contains(folded);
  }

  static boolean isLength(String folded) {
    return LENGTHS.contains(folded);
  }

  static boolean isPiece(String folded) {
    return PIECES.contains(folded);
  }

  static boolean isBefore(String folded) {
    return BEFORE.contains(folded);
  }
}
